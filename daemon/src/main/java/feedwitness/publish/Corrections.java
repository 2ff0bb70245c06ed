package feedwitness.publish;

import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckSubject;
import feedwitness.check.RangeQualified;
import feedwitness.quantity.PointName;
import java.time.Instant;
import java.util.List;

/**
 * What readings in doubt would have been without the likely error that a later check found. Shown
 * beside what was recorded, never in its place.
 */
final class Corrections {
  private final List<RangeQualified> ranges;

  private Corrections(List<RangeQualified> ranges) {
    this.ranges = ranges;
  }

  /** Of the probe at a point. */
  static Corrections of(PointName point, List<CheckEvidence> evidence) {
    CheckSubject probe = CheckSubject.probe(point);
    return new Corrections(
        evidence.stream()
            .filter(RangeQualified.class::isInstance)
            .map(RangeQualified.class::cast)
            .filter(range -> range.subject().equals(probe))
            .filter(range -> range.shape() != RangeQualified.Shape.UNKNOWN)
            .toList());
  }

  /**
   * Without the likely error.
   *
   * @param milliSiemensPerCm at 25 °C, as recorded
   * @return mS/cm at 25 °C; NaN if nothing is said of that time
   */
  double corrected(Instant at, double milliSiemensPerCm) {
    double value = Double.NaN;
    for (RangeQualified range : ranges) {
      boolean within = at.isAfter(range.after().at()) && !at.isAfter(range.through().at());
      // the last word counts
      value = within ? range.corrected(at, milliSiemensPerCm) : value;
    }
    return value;
  }
}
