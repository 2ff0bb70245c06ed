package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.engine.AlarmWatch;
import feedwitness.engine.Engine;
import feedwitness.engine.FeedLineWatch;
import feedwitness.engine.Intake;
import feedwitness.engine.LineReplay;
import feedwitness.engine.ServiceState;
import feedwitness.host.DiskRoom;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import feedwitness.sample.Sample;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.simulate.Nursery;
import feedwitness.simulate.NurseryOptions;
import feedwitness.simulate.Schedule;
import feedwitness.simulate.Truth;
import feedwitness.simulate.Wire;
import feedwitness.site.Site;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import feedwitness.watch.drift.DriftFinding;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/**
 * The demo's week as fast as it goes: the demo's own configuration, the virtual nursery's probes
 * read every five seconds, the real engine, watches, alarms and store, under the nursery's clock.
 */
final class PlayedWeek implements AutoCloseable, TimeSource {
  private static final int EVERY = 5;
  private static final PointName SOURCE = new PointName("source");
  private static final PointName LINE = new PointName("line");

  private final Path folder;
  private final Site site;
  private final Nursery nursery =
      new Nursery(new NurseryOptions(7, DemoFolder.ZONE, Schedule.week()), local(9, 0));
  private Running running;

  private record Running(H2Ledger ledger, Intake intake, Engine engine, FeedLineWatch lines) {}

  PlayedWeek(Path folder) throws IOException {
    this.folder = folder;
    ConfigOutcome read =
        ConfigReader.read(
            DemoFolder.open(folder)
                .writeConfig(
                    "/dev/serial/by-id/usb-source",
                    "/dev/serial/by-id/usb-bus",
                    new ListenAddress("127.0.0.1", 0)));
    site = assertInstanceOf(ConfigOutcome.Read.class, read, read::toString).config().site();
    running = open();
  }

  private static Instant local(int day, int hour) {
    return ZonedDateTime.of(2025, 6, day, hour, 0, 0, 0, DemoFolder.ZONE).toInstant();
  }

  private Running open() {
    Path store = folder.resolve("played");
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                store,
                Duration.ofSeconds(1),
                StoreSettings.DEFAULT_QUEUE,
                1_000_000,
                Optional.empty()),
            this,
            new DiskRoom(store));
    H2Ledger ledger = assertInstanceOf(LedgerOpening.Opened.class, opening).ledger();
    Intake intake = new Intake(ledger.boot(), this);
    Engine engine = new Engine(ledger.boot(), "test", site, intake, ledger, ledger, this);
    AlarmWatch alarms =
        new AlarmWatch(
            engine,
            engine::stampNow,
            ledger,
            ledger,
            new ServiceState(
                ledger::halted, new DiskRoom(store), 1_000_000, ServiceState.USUAL_SILENCE),
            () -> true);
    FeedLineWatch lines =
        new FeedLineWatch(site, engine::stampNow, ledger, ledger, ledger, alarms::report);
    engine.watch(alarms);
    engine.watch(lines);
    return new Running(ledger, intake, engine, lines);
  }

  /** Lets it run on until an hour of a day of June 2025; the 9th is a Monday. */
  void until(int day, int hour) {
    while (nursery.now().isBefore(local(day, hour))) {
      nursery.advanceTo(nursery.now().plusSeconds(EVERY));
      Truth truth = nursery.truth();
      take(SOURCE, truth.source(), nursery.isUnplugged(Wire.SOURCE));
      take(LINE, truth.line(), nursery.isUnplugged(Wire.BUS));
      running.engine().drain();
    }
  }

  private void take(PointName point, Truth.Point probe, boolean unplugged) {
    running.intake().accept(stamp -> sample(point, probe, unplugged, stamp));
  }

  private static Sample sample(
      PointName point, Truth.Point probe, boolean unplugged, feedwitness.quantity.Stamp stamp) {
    return unplugged
        ? new Missing(point, stamp, Missing.Cause.CABLE_PULLED, "plug it in")
        : new Indication(
            point,
            stamp,
            new Reading(
                probe.indicated(),
                ConductivityUnit.MILLISIEMENS_PER_CM,
                probe.indicatedCelsius(),
                TemperatureUnit.CELSIUS),
            Indication.Origin.PROBE);
  }

  /** Stops and starts again on what the store holds. */
  void restart() {
    stop();
    running = open();
  }

  /** What is on record, oldest first. */
  List<Evidence> records(String kind) {
    restart();
    return running.ledger().evidence(EvidenceQuery.after(0, EvidenceQuery.MOST, kind));
  }

  /** The watch once more over what is stored. */
  List<DriftFinding> replayed() {
    return new LineReplay(site.feedLines().get(0), site, running.ledger(), running.ledger())
        .run(Optional.empty(), Optional.empty())
        .findings();
  }

  private void stop() {
    running.lines().keep();
    running.ledger().close();
  }

  @Override
  public void close() {
    stop();
  }

  @Override
  public long monotonicNanos() {
    return Duration.ofMillis(nursery.now().toEpochMilli()).toNanos();
  }

  @Override
  public Instant wall() {
    return nursery.now();
  }
}
