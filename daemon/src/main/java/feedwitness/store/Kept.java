package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.sample.Missing;
import feedwitness.sample.Sample;

/**
 * What is kept of a measurement: the sample untouched, its flags, and which basis made it. All
 * numbers are made again from these.
 *
 * @param basis number of the basis in the file
 */
record Kept(Sample sample, Flags flags, int basis) {
  /** One word too long for a row must not keep the rest from being written. */
  static final int MAX_DETAIL = 2_000;

  static Kept of(Measurement measurement, int basis) {
    Sample sample = measurement.sample();
    if (sample instanceof Missing missing && missing.detail().length() > MAX_DETAIL) {
      sample =
          new Missing(
              missing.point(),
              missing.stamp(),
              missing.cause(),
              missing.detail().substring(0, MAX_DETAIL - 1) + "…");
    }
    return new Kept(sample, measurement.flags(), basis);
  }
}
