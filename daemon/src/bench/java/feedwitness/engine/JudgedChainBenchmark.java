package feedwitness.engine;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;

/** The whole chain as the engine runs it, quality tests of a point's past included. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx48m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"})
@Threads(1)
public class JudgedChainBenchmark {
  private static final PointName LINE = new PointName("line");
  private static final Basis BASIS =
      new Basis(
          Basis.RULES,
          "modbus-scaled",
          false,
          new CalibrationCurve.Identity(),
          new TemperatureCompensation.Linear(0.0188, 0.0006),
          new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3));
  private static final Site SITE =
      new Site(
          "Quarry End Nursery",
          ZoneOffset.UTC,
          List.of(
              new MeasuringPoint(
                  LINE,
                  "Glasshouse line",
                  MeasuringPoint.Place.LINE,
                  Optional.empty(),
                  new CompensationChoice.Linear(1.88))));

  /** How many measurements went before. */
  @Param({"1000", "1000000"})
  public int history;

  private final Judges judges = new Judges();
  private long sequence;

  /** Makes the history. */
  @Setup
  public void remember() {
    for (int i = 0; i < history; i++) {
      measure();
    }
  }

  /** One measurement, judged; a reading a second. */
  @Benchmark
  public feedwitness.measurement.Measurement measure() {
    long i = ++sequence;
    Indication indication =
        new Indication(
            LINE,
            new Stamp(1, i, i * 1_000_000_000L, 1_780_000_000_000L + i * 1000L, true),
            new Reading(
                1600 + i % 7 + 40 * (i % 4096 / 4096.0),
                ConductivityUnit.MICROSIEMENS_PER_CM,
                18 + i % 5 * 0.1,
                TemperatureUnit.CELSIUS),
            Indication.Origin.PROBE);
    return judges.judge(MeasurementChain.measure(indication, BASIS), SITE).measurement();
  }
}
