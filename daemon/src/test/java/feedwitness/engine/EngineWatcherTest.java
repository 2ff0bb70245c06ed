package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.DurableMark;
import feedwitness.ledger.History;
import feedwitness.ledger.MeasurementLedger;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Those who follow the engine: what they are told, and that they cannot stop it. */
class EngineWatcherTest {
  private static final PointName LINE = new PointName("line");
  private static final Site SITE =
      new Site(
          "Quarry End Nursery",
          ZoneOffset.UTC,
          List.of(
              new MeasuringPoint(
                  LINE,
                  "Line",
                  MeasuringPoint.Place.LINE,
                  Optional.empty(),
                  new CompensationChoice.None())));

  private final Kept kept = new Kept();
  private final SteppedClock clock = new SteppedClock();
  private final Intake intake = new Intake(1, clock);
  private final Engine engine = new Engine(1, "test", SITE, intake, kept, kept, clock);
  private final List<String> told = new ArrayList<>();

  private void read(double seconds) {
    clock.nanos = (long) (seconds * 1e9);
    intake.accept(
        stamp ->
            new Indication(
                LINE,
                stamp,
                new Reading(1.5, ConductivityUnit.MILLISIEMENS_PER_CM, 20, TemperatureUnit.CELSIUS),
                Indication.Origin.PROBE));
    engine.drain();
  }

  private final class Listening implements EngineWatcher {
    @Override
    public void measured(Measurement measurement) {
      told.add("measured " + measurement.stamp().id());
    }

    @Override
    public void tick(Stamp now) {
      told.add("tick " + now.monotonicNanos() / 1_000_000_000L);
    }

    @Override
    public void follow(Site site) {
      told.add("follow " + site.points().size());
    }
  }

  private static final class Failing implements EngineWatcher {
    @Override
    public void measured(Measurement measurement) {
      throw new IllegalStateException("the inside of an alarm");
    }

    @Override
    public void tick(Stamp now) {
      throw new IllegalStateException("the inside of an alarm");
    }

    @Override
    public void follow(Site site) {
      throw new IllegalStateException("the inside of an alarm");
    }
  }

  @Test
  void areToldEachMeasurementAndASecondNowAndThen() {
    engine.watch(new Listening());
    read(0);
    read(0.4);
    read(1.1);
    engine.follow(new Site("Quarry End Nursery", ZoneOffset.UTC, List.of()));
    assertEquals(
        List.of("measured 1-1", "tick 0", "measured 1-2", "measured 1-3", "tick 1", "follow 0"),
        told);
  }

  @Test
  void cannotStopReadingsOrOneAnother() {
    engine.watch(new Failing());
    engine.watch(new Listening());
    for (int i = 0; i < 5; i++) {
      read(i);
    }
    engine.follow(SITE);
    assertEquals(5, kept.measurements.size());
    assertEquals(11, told.size());
    assertTrue(engine.point(LINE).orElseThrow().latest().isPresent());
    assertTrue(engine.health().trouble().toString().contains("watches over the readings"));
  }

  private static final class SteppedClock implements TimeSource {
    private long nanos;

    @Override
    public long monotonicNanos() {
      return nanos;
    }

    @Override
    public Instant wall() {
      return Instant.ofEpochSecond(0, nanos);
    }
  }

  /** Measurements in memory. */
  private static final class Kept implements MeasurementLedger, History {
    private final List<Measurement> measurements = new ArrayList<>();

    @Override
    public void append(Measurement measurement) {
      measurements.add(measurement);
    }

    @Override
    public DurableMark durableThrough() {
      return new DurableMark(1, measurements.size(), Instant.EPOCH);
    }

    @Override
    public Optional<String> trouble() {
      return Optional.empty();
    }

    @Override
    public Optional<Measurement> latest(PointName point) {
      return Optional.empty();
    }

    @Override
    public Optional<Measurement> latestReading(PointName point) {
      return Optional.empty();
    }

    @Override
    public Course course(PointName point, Instant from, Instant to, int maxBuckets) {
      return new Course(java.time.Duration.ZERO, List.of());
    }

    @Override
    public void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each) {
      measurements.forEach(each);
    }

    @Override
    public List<PointName> recorded() {
      return List.of();
    }

    @Override
    public Optional<Instant> newest() {
      return Optional.empty();
    }
  }
}
