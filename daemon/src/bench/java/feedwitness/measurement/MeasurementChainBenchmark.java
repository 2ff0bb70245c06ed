package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
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

/**
 * Measurements a second on one core, made by the chain the engine uses. {@code history} is how many
 * were measured before the clock starts; octets allocated for one measurement must not depend on
 * it.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx48m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"})
@Threads(1)
public class MeasurementChainBenchmark {
  private static final int READINGS = 1024;

  /** How many measurements went before. */
  @Param({"1000", "1000000"})
  public int history;

  /** Which compensation is in force. */
  @Param({"linear", "iso7888"})
  public String compensation;

  private final Indication[] indications = new Indication[READINGS];
  private Basis basis;
  private int next;

  /** Makes the readings and the history. */
  @Setup
  public void readAndRemember() {
    basis =
        new Basis(
            Basis.RULES,
            "modbus-scaled",
            false,
            new CalibrationCurve.Linear(1.02, -0.01, 0.006, 0.009, -0.9),
            compensation.equals("linear")
                ? new TemperatureCompensation.Linear(0.0188, 0.0006)
                : new TemperatureCompensation.NaturalWater(),
            new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3));
    for (int i = 0; i < READINGS; i++) {
      indications[i] = indication(i);
    }
    for (int i = 0; i < history; i++) {
      measure();
    }
  }

  private static Indication indication(int i) {
    return new Indication(
        new PointName("line"),
        new Stamp(1, i + 1L, i * 1_000_000_000L, 1_780_000_000_000L + i * 1000L, true),
        new Reading(
            1600 + 40 * Math.sin(i / 50.0),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            18 + 4 * Math.sin(i / 300.0),
            TemperatureUnit.CELSIUS),
        Indication.Origin.PROBE);
  }

  /** One measurement. */
  @Benchmark
  public feedwitness.measurement.Measurement measure() {
    next = (next + 1) % READINGS;
    return MeasurementChain.measure(indications[next], basis);
  }
}
