package feedwitness.store;

import feedwitness.ledger.Bucket;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import java.time.Instant;

/** Gathers samples and roll-ups of one stretch of time. Not for several threads. */
final class Stretch {
  /** A beaker or bucket is no part of what its place held. */
  private static final Flags ELSEWHERE = Flags.of(QualityFlag.IN_BEAKER, QualityFlag.OUT_OF_PLACE);

  private int readings;
  private int missing;
  private double sum;
  private double min = Double.POSITIVE_INFINITY;
  private double max = Double.NEGATIVE_INFINITY;
  private int temperatures;
  private double sumCelsius;
  private long flags;

  void add(Measurement measurement) {
    double value = measurement.conductivity25MilliSiemensPerCm();
    boolean elsewhere = measurement.flags().hasAny(ELSEWHERE);
    if (Double.isNaN(value) || elsewhere) {
      missing++;
    } else {
      readings++;
      sum += value;
      min = Math.min(min, value);
      max = Math.max(max, value);
    }
    if (!Double.isNaN(measurement.temperatureCelsius()) && !elsewhere) {
      temperatures++;
      sumCelsius += measurement.temperatureCelsius();
    }
    flags |= measurement.flags().bits();
  }

  void add(Rollup part) {
    if (part.readings() > 0) {
      readings += part.readings();
      sum += part.mean() * part.readings();
      min = Math.min(min, part.min());
      max = Math.max(max, part.max());
    }
    missing += part.missing();
    if (part.temperatures() > 0) {
      temperatures += part.temperatures();
      sumCelsius += part.meanCelsius() * part.temperatures();
    }
    flags |= part.flags();
  }

  Rollup rollup(long startMillis) {
    return new Rollup(
        startMillis,
        readings,
        missing,
        mean(),
        readings == 0 ? Double.NaN : min,
        readings == 0 ? Double.NaN : max,
        temperatures,
        meanCelsius(),
        flags);
  }

  Bucket bucket(long startMillis) {
    return new Bucket(
        Instant.ofEpochMilli(startMillis),
        mean(),
        readings == 0 ? Double.NaN : min,
        readings == 0 ? Double.NaN : max,
        meanCelsius(),
        readings,
        missing,
        new Flags(flags));
  }

  private double mean() {
    return readings == 0 ? Double.NaN : sum / readings;
  }

  private double meanCelsius() {
    return temperatures == 0 ? Double.NaN : sumCelsius / temperatures;
  }
}
