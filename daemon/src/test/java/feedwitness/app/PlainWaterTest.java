package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.check.CheckSubject;
import feedwitness.check.ComparisonMade;
import feedwitness.check.Verdict;
import feedwitness.engine.AlarmWatch;
import feedwitness.engine.CheckWatch;
import feedwitness.engine.Engine;
import feedwitness.engine.Intake;
import feedwitness.engine.ServiceState;
import feedwitness.host.DiskRoom;
import feedwitness.ledger.Afterthoughts;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.simulate.Nursery;
import feedwitness.simulate.NurseryOptions;
import feedwitness.simulate.Schedule;
import feedwitness.simulate.Truth;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Sunday's flush with plain water in the virtual nursery, through the real engine and store: line
 * and source must read the same, a free check at the low end.
 */
@Timeout(240)
class PlainWaterTest {
  private static final int EVERY_SECONDS = 5;
  private static final PointName SOURCE = new PointName("source");
  private static final PointName LINE = new PointName("line");

  @TempDir private Path folder;

  private static Instant local(int day, int hour) {
    return ZonedDateTime.of(2025, 6, day, hour, 0, 0, 0, DemoFolder.ZONE).toInstant();
  }

  /** From the last feeding of Saturday to noon of Sunday; what happened before that. */
  private List<ComparisonMade> play(String deed) throws Exception {
    Nursery nursery =
        new Nursery(new NurseryOptions(7, DemoFolder.ZONE, Schedule.quiet()), local(7, 17));
    Clock clock = new Clock(nursery);
    ConfigOutcome read =
        ConfigReader.read(
            DemoFolder.open(folder)
                .writeConfig(
                    "/dev/serial/by-id/usb-source",
                    "/dev/serial/by-id/usb-bus",
                    new ListenAddress("127.0.0.1", 0)));
    Config config = assertInstanceOf(ConfigOutcome.Read.class, read, read::toString).config();
    DiskRoom room = new DiskRoom(folder);
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                folder.resolve("played"),
                Duration.ofSeconds(1),
                StoreSettings.DEFAULT_QUEUE,
                1_000_000,
                Optional.empty()),
            clock,
            room);
    try (H2Ledger ledger = assertInstanceOf(LedgerOpening.Opened.class, opening).ledger()) {
      Intake intake = new Intake(ledger.boot(), clock);
      Engine engine =
          new Engine(ledger.boot(), "test", config.site(), intake, ledger, ledger, clock);
      AlarmWatch alarms =
          new AlarmWatch(
              engine,
              engine::stampNow,
              ledger,
              ledger,
              new ServiceState(ledger::halted, room, 1_000_000, ServiceState.USUAL_SILENCE),
              () -> true);
      CheckWatch checks =
          Checks.watch(config.checks(), engine, alarms, ledger, ledger, new Afterthoughts());
      engine.watch(checks);
      if (!deed.isEmpty()) {
        nursery.begin(deed);
      }
      while (nursery.now().isBefore(local(8, 12))) {
        nursery.advanceTo(nursery.now().plusSeconds(EVERY_SECONDS));
        Truth truth = nursery.truth();
        take(intake, SOURCE, truth.source());
        take(intake, LINE, truth.line());
        engine.drain();
      }
      while (!ledger.sync(Duration.ofSeconds(10))) {
        Thread.onSpinWait();
      }
      return checks.history(CheckSubject.probe(LINE)).comparisons();
    }
  }

  private static void take(Intake intake, PointName point, Truth.Point probe) {
    intake.accept(
        stamp ->
            new Indication(
                point,
                stamp,
                new Reading(
                    probe.indicated(),
                    ConductivityUnit.MILLISIEMENS_PER_CM,
                    probe.indicatedCelsius(),
                    TemperatureUnit.CELSIUS),
                Indication.Origin.PROBE));
  }

  private record Clock(Nursery nursery) implements TimeSource {
    @Override
    public long monotonicNanos() {
      return Duration.ofMillis(nursery.now().toEpochMilli()).toNanos();
    }

    @Override
    public Instant wall() {
      return nursery.now();
    }
  }

  @Test
  void aFlushFindsAGoodProbeGood() throws Exception {
    List<ComparisonMade> found = play("");
    assertEquals(1, found.size(), found::toString);
    ComparisonMade flush = found.get(0);
    assertEquals(ComparisonMade.Type.PLAIN_WATER, flush.type());
    assertEquals("source", flush.against());
    assertEquals(0, flush.error(), 1, flush::words);
    assertTrue(flush.verdict() != Verdict.FAIL, flush::words);
  }

  @Test
  void aFlushFindsAProbeThatReadsAnEighthLow() throws Exception {
    List<ComparisonMade> found = play("line adjust -12%");
    assertEquals(1, found.size(), found::toString);
    assertEquals(-12, found.get(0).error(), 3, found.get(0)::words);
    assertEquals(Verdict.FAIL, found.get(0).verdict(), found.get(0)::words);
  }
}
