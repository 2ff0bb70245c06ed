package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.engine.Engine;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Missing;
import feedwitness.simulate.Nursery;
import feedwitness.simulate.NurseryOptions;
import feedwitness.simulate.NurseryRunner;
import feedwitness.simulate.RunningNursery;
import feedwitness.simulate.Schedule;
import feedwitness.simulate.SimulatedClock;
import feedwitness.simulate.Wire;
import feedwitness.site.Site;
import feedwitness.wire.SystemPorts;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorded run makes the same measurements again, octet for octet.
 *
 * <p>The golden run in {@code replay/} was recorded by {@link #livesOnceMoreFromItsTape} with
 * {@code -Dreplay.record=FOLDER}, and what is expected of it is written anew by {@link
 * #theGoldenRun} with {@code -Dreplay.expect=FILE}; look at the difference before committing it.
 */
@Timeout(120)
class ReplayTest {
  private static final Instant TUESDAY = Instant.parse("2026-06-02T09:00:00Z");
  private static final double PACE = 10;
  private static final Path GOLDEN = Path.of("src/test/resources/replay");

  @TempDir Path folder;

  @Test
  void livesOnceMoreFromItsTape() throws Exception {
    TimeSource system = TimeSource.system();
    SimulatedClock fast = new SimulatedClock(system, TUESDAY, PACE);
    try (RunningNursery nursery =
        NurseryRunner.start(
            new Nursery(
                new NurseryOptions(7, ZoneId.of("Europe/London"), Schedule.quiet()), TUESDAY),
            fast,
            folder.resolve("cables"))) {
      Path config = folder.resolve("feedwitness.toml");
      Files.writeString(config, config(nursery.busLink(), nursery.sourceLink()));
      Site site = ReplayBench.site(config);
      ReplayBench.Run live =
          ReplayBench.live(
              site,
              PACE,
              new RealTicks(system, fast),
              new SystemPorts(),
              folder.resolve("live"),
              engine -> pullTheCable(nursery, engine));
      assertTrue(live.measurements().size() > 20, live.measurements()::toString);
      ReplayBench.Run again =
          ReplayBench.replayed(site, PACE, live.tape(), folder.resolve("again"));
      assertEquals(live.measurements(), again.measurements());
      assertEquals(live.qualifications(), again.qualifications());
      keepIfAsked(config, live);
    }
  }

  private static void pullTheCable(RunningNursery nursery, Engine engine) throws Exception {
    PointName line = new PointName("line");
    until(engine, line, m -> !(m.sample() instanceof Missing));
    until(engine, new PointName("source"), m -> !(m.sample() instanceof Missing));
    Thread.sleep(1000);
    nursery.unplug(Wire.BUS);
    until(engine, line, m -> m.sample() instanceof Missing);
    nursery.replug(Wire.BUS);
    until(engine, line, m -> !(m.sample() instanceof Missing));
    Thread.sleep(300);
  }

  private static void until(Engine engine, PointName point, Predicate<Measurement> wanted)
      throws Exception {
    for (int i = 0; i < 300; i++) {
      if (engine.point(point).orElseThrow().latest().filter(wanted).isPresent()) {
        return;
      }
      Thread.sleep(50);
    }
    throw new AssertionError("waited in vain for " + point);
  }

  @Test
  void theGoldenRun() throws Exception {
    Site site = ReplayBench.site(GOLDEN.resolve("feedwitness.toml"));
    List<String> tape = Files.readAllLines(GOLDEN.resolve("nursery.tape"));
    ReplayBench.Run again = ReplayBench.replayed(site, PACE, tape, folder.resolve("again"));
    String wanted = System.getProperty("replay.expect", "");
    if (!wanted.isEmpty()) {
      Files.write(Path.of(wanted), again.measurements());
    }
    assertEquals(Files.readAllLines(GOLDEN.resolve("nursery.measurements")), again.measurements());
  }

  @Test
  void saysWhereTheTapeAndTheProgramPart() throws Exception {
    Site site = ReplayBench.site(GOLDEN.resolve("feedwitness.toml"));
    List<String> tape = new ArrayList<>(Files.readAllLines(GOLDEN.resolve("nursery.tape")));
    int question = 0;
    while (!tape.get(question).contains(" sent ")) {
      question++;
    }
    tape.set(question, tape.get(question).replaceAll("sent .*", "sent 01 02 03"));
    IllegalStateException parted =
        assertThrows(
            IllegalStateException.class,
            () -> ReplayBench.replayed(site, PACE, tape, folder.resolve("again")));
    assertTrue(String.valueOf(parted.getMessage()).contains("the tape says"), parted::getMessage);
  }

  @Test
  void refusesWhatIsNoTape() {
    Site site = ReplayBench.site(GOLDEN.resolve("feedwitness.toml"));
    for (List<String> odd :
        List.of(List.<String>of(), List.of("feedwitness tape 1", "began 5", "1 2 3 whistled"))) {
      assertThrows(
          IllegalArgumentException.class,
          () -> ReplayBench.replayed(site, PACE, odd, folder.resolve("odd")));
    }
    assertFalse(site.points().isEmpty());
  }

  /** Wires run in real time, dates as fast as the nursery. */
  private record RealTicks(TimeSource real, TimeSource dates) implements TimeSource {
    @Override
    public long monotonicNanos() {
      return real.monotonicNanos();
    }

    @Override
    public Instant wall() {
      return dates.wall();
    }
  }

  private static void keepIfAsked(Path config, ReplayBench.Run live) throws Exception {
    String wanted = System.getProperty("replay.record", "");
    if (!wanted.isEmpty()) {
      Path into = Files.createDirectories(Path.of(wanted));
      Files.copy(config, into.resolve("feedwitness.toml"));
      Files.write(into.resolve("nursery.tape"), live.tape());
      Files.write(into.resolve("nursery.measurements"), live.measurements());
    }
  }

  private static String config(Object bus, Object source) {
    return """
        [nursery]
        name = "Quarry End Nursery"
        zone = "Europe/London"
        [[point]]
        name = "line"
        title = "Glasshouse line"
        place = "line"
        port = "%s"
        profile = "modbus-scaled"
        unit = 12
        compensation = "linear"
        [[point]]
        name = "tank"
        title = "Mixing tank"
        place = "tank"
        port = "%s"
        profile = "modbus-float"
        unit = 11
        compensation = "linear"
        [[point]]
        name = "source"
        title = "Borehole"
        place = "source"
        port = "%s"
        profile = "pushed-csv"
        compensation = "iso7888"
        """
        .formatted(bus, bus, source);
  }
}
