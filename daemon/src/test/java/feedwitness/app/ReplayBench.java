package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.acquire.PortPlan;
import feedwitness.acquire.TapePlayer;
import feedwitness.acquire.TapeRecorder;
import feedwitness.engine.Engine;
import feedwitness.engine.Intake;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Qualification;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.site.Site;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import feedwitness.wire.PortOpener;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** The service's sessions, intake, engine and store on real wires, or again on a tape of them. */
final class ReplayBench {
  private ReplayBench() {}

  /**
   * What came of a run: the tape, every measurement as a line of text, and what was said later of
   * earlier ones.
   */
  record Run(List<String> tape, List<String> measurements, List<Qualification> qualifications) {
    Run {
      tape = List.copyOf(tape);
      measurements = List.copyOf(measurements);
      qualifications = List.copyOf(qualifications);
    }
  }

  /** Something done to the wires while they are recorded. */
  interface Meanwhile {
    void happens(Engine engine) throws Exception;
  }

  static Site site(Path config) {
    ConfigOutcome outcome = ConfigReader.read(ConfigFiles.beside(config, ZoneOffset.UTC));
    return assertInstanceOf(ConfigOutcome.Read.class, outcome, outcome::toString).config().site();
  }

  static Run live(
      Site site, double pace, TimeSource real, PortOpener opener, Path store, Meanwhile meanwhile)
      throws Exception {
    List<String> tape = Collections.synchronizedList(new ArrayList<>());
    List<String> measured = Collections.synchronizedList(new ArrayList<>());
    List<Qualification> later = Collections.synchronizedList(new ArrayList<>());
    TapeRecorder recorder = new TapeRecorder(real, tape::add);
    try (H2Ledger ledger = open(store, recorder.clock())) {
      Intake intake = new Intake(ledger.boot(), recorder.clock());
      Engine engine = engine(site, intake, ledger, recorder.clock(), later::add);
      engine.subscribe(measurement -> measured.add(line(measurement)));
      engine.start();
      recorder.start(PortPlans.of(site, pace), opener, intake);
      meanwhile.happens(engine);
      recorder.close();
      engine.close();
    }
    return new Run(tape, measured, later);
  }

  static Run replayed(Site site, double pace, List<String> tape, Path store) {
    List<String> measured = new ArrayList<>();
    List<Qualification> later = new ArrayList<>();
    TapePlayer player = new TapePlayer(tape);
    try (H2Ledger ledger = open(store, player.clock())) {
      Intake intake = new Intake(ledger.boot(), player.clock());
      Engine engine = engine(site, intake, ledger, player.clock(), later::add);
      engine.subscribe(measurement -> measured.add(line(measurement)));
      List<PortPlan> plans = PortPlans.of(site, pace);
      player.play(plans, intake, engine::drain);
    }
    return new Run(tape, measured, later);
  }

  private static Engine engine(
      Site site,
      Intake intake,
      H2Ledger ledger,
      TimeSource clock,
      Consumer<Qualification> qualifications) {
    return new Engine(ledger.boot(), "test", site, intake, ledger, ledger, clock, qualifications);
  }

  private static H2Ledger open(Path folder, TimeSource clock) {
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(folder, Duration.ofSeconds(1), StoreSettings.DEFAULT_QUEUE), clock);
    return assertInstanceOf(LedgerOpening.Opened.class, opening, opening::toString).ledger();
  }

  /** Everything a measurement is, exactly: Java writes doubles so that they read back the same. */
  private static String line(Measurement m) {
    String said =
        m.sample() instanceof Indication indication
            ? indication.reading() + " " + indication.origin()
            : ((Missing) m.sample()).cause() + " " + ((Missing) m.sample()).detail();
    return String.join(
        " | ",
        m.point().text(),
        m.stamp().toString(),
        said,
        String.valueOf(m.conductivityMilliSiemensPerCm()),
        String.valueOf(m.conductivity25MilliSiemensPerCm()),
        String.valueOf(m.standardUncertaintyMilliSiemensPerCm()),
        String.valueOf(m.temperatureCelsius()),
        m.flags().list().stream().map(flag -> flag.code()).collect(Collectors.joining(",")),
        m.basis().toText());
  }
}
