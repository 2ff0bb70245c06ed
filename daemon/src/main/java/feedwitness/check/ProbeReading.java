package feedwitness.check;

import feedwitness.quantity.Stamp;

/**
 * What a probe said during a check, before any correction of ours.
 *
 * @param stamp when
 * @param milliSiemensPerCm indicated, mS/cm
 * @param celsius NaN if the instrument sends none
 */
public record ProbeReading(Stamp stamp, double milliSiemensPerCm, double celsius) {

  /** Seconds of the clock that never jumps; arbitrary origin. */
  double seconds() {
    return stamp.monotonicNanos() / 1e9;
  }
}
