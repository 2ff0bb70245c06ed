package feedwitness.solution;

import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The full model for a feed of all ten ions at ever new temperatures, and the live path: a share
 * looked up in a table, and a measured conductivity referred to 25 °C. Claimed: 100 µs, 1 µs, 1 µs.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx48m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"})
@Threads(1)
public class ConductivityBenchmark {
  private static final Composition WATER =
      Composition.of(Map.of(Ion.CA, 0.0018, Ion.MG, 0.0004, Ion.CL, 0.0005, Ion.CO3, 0.0041));
  private static final Composition FEED =
      Composition.of(
          Map.ofEntries(
              Map.entry(Ion.K, 0.0056),
              Map.entry(Ion.NA, 0.0005),
              Map.entry(Ion.NH4, 0.0012),
              Map.entry(Ion.CA, 0.0038),
              Map.entry(Ion.MG, 0.0012),
              Map.entry(Ion.CL, 0.0010),
              Map.entry(Ion.NO3, 0.0098),
              Map.entry(Ion.SO4, 0.0010),
              Map.entry(Ion.PO4, 0.0010),
              Map.entry(Ion.CO3, 0.0035)));

  private final ConductivityModel model = new ConductivityModel();
  private FeedTable table;
  private double celsius;
  private double share;

  /** Makes the table. */
  @Setup
  public void tabulate() {
    table = FeedTable.of(model, WATER, FEED, 2).value().orElseThrow();
  }

  /** One answer of the full model. */
  @Benchmark
  public ConductivityOutcome fullModelOfTenIons() {
    return model.predict(FEED, warmer());
  }

  /** One look into the table. */
  @Benchmark
  public double tabledConductivity() {
    return table.conductivity(stronger(), warmer());
  }

  /** One measured value referred to 25 °C. */
  @Benchmark
  public double referredTo25() {
    return table.at25(1.2 + stronger() / 4, 15 + warmer() / 6);
  }

  private double warmer() {
    celsius = celsius > 44 ? 0.3 : celsius + 0.37;
    return celsius;
  }

  private double stronger() {
    share = share > 1.9 ? 0.01 : share + 0.013;
    return share;
  }
}
