package feedwitness.app;

import feedwitness.quantity.TimeSource;
import feedwitness.simulate.Nursery;
import feedwitness.simulate.NurseryOptions;
import feedwitness.simulate.NurseryRunner;
import feedwitness.simulate.RunningNursery;
import feedwitness.simulate.Schedule;
import feedwitness.simulate.SimulatedClock;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;

/** The virtual nursery on a quiet week, its cables in a folder, and a clock that runs faster. */
public final class NurseryUnderTest implements AutoCloseable {
  private static final long SEED = 7;

  private final Path folder;
  private final SimulatedClock clock;
  private final double pace;
  private final RunningNursery nursery;

  private NurseryUnderTest(Path folder, SimulatedClock clock, double pace, RunningNursery nursery) {
    this.folder = folder;
    this.clock = clock;
    this.pace = pace;
    this.nursery = nursery;
  }

  /** Starts it at an instant, {@code pace} times as fast as real time. */
  public static NurseryUnderTest open(Path folder, Instant start, double pace) throws IOException {
    SimulatedClock clock = new SimulatedClock(TimeSource.system(), start, pace);
    RunningNursery nursery =
        NurseryRunner.start(
            new Nursery(
                new NurseryOptions(SEED, ZoneId.of("Europe/London"), Schedule.quiet()), start),
            clock,
            folder.resolve("cables"));
    return new NurseryUnderTest(folder, clock, pace, nursery);
  }

  /** The nursery itself, to begin faults in. */
  public RunningNursery itself() {
    return nursery;
  }

  /** Its clock. */
  public SimulatedClock clock() {
    return clock;
  }

  /**
   * The whole service at its cables.
   *
   * @param points the configuration; {@code {bus}} and {@code {source}} stand for the ports
   */
  public ServiceUnderTest start(String points) throws IOException {
    return ServiceUnderTest.start(folder, at(points), clock, pace);
  }

  /** A configuration with the ports filled in. */
  public String at(String points) {
    return points.replace("{bus}", nursery.busLink()).replace("{source}", nursery.sourceLink());
  }

  @Override
  public void close() {
    nursery.close();
  }
}
