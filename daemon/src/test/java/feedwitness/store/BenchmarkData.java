package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Readings of four probes, the same for every store: conductivity wanders and is shown to 0.001
 * mS/cm, temperature goes up and down by day and is shown to 0.1 °C, and each comes up to 3 ms
 * late.
 */
final class BenchmarkData {
  static final List<PointName> POINTS =
      List.of(
          new PointName("source"),
          new PointName("tank"),
          new PointName("line"),
          new PointName("drain"));
  static final Instant START = Instant.parse("2026-01-01T00:00:00Z");

  private final Random random;
  private final long stepMillis;
  private final double[] level = {0.46, 1.9, 1.85, 2.3};
  private long rounds;

  /**
   * @param stepMillis between two readings of a probe
   */
  BenchmarkData(long seed, long stepMillis) {
    this.random = new Random(seed);
    this.stepMillis = stepMillis;
  }

  /** The next readings in the order of arrival; a multiple of four. */
  List<Measurement> next(int readings, int boot) {
    List<Measurement> list = new ArrayList<>(readings);
    while (list.size() < readings) {
      for (int i = 0; i < POINTS.size(); i++) {
        list.add(one(i, boot));
      }
      rounds++;
    }
    return list;
  }

  private Measurement one(int i, int boot) {
    level[i] = Math.max(0.3, Math.min(3.5, level[i] + random.nextGaussian() * 0.0005));
    long millis = rounds * stepMillis + 11L * i + random.nextInt(4);
    double day = 2 * Math.PI * millis / 86_400_000.0;
    Stamp stamp =
        new Stamp(
            boot,
            rounds * POINTS.size() + i + 1,
            millis * 1_000_000,
            START.toEpochMilli() + millis,
            true);
    return Nursery.measured(
        POINTS.get(i),
        stamp,
        Math.rint(level[i] * 1_000) / 1_000,
        Math.rint((20 + 4 * Math.sin(day) + random.nextGaussian() * 0.02) * 10) / 10);
  }

  /** When the next reading comes. */
  Instant end() {
    return START.plusMillis(rounds * stepMillis);
  }
}
