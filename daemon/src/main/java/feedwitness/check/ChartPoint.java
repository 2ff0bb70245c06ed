package feedwitness.check;

import java.time.Instant;

/**
 * One error on the control chart.
 *
 * @param at when it was found
 * @param source which look at the probe
 * @param percent error at the strength the chart is for, %
 * @param standardPercent its whole standard uncertainty, %
 * @param repeatPercent the part that differs from check to check with the same bottles, %, > 0
 * @param verdict against its tolerance
 * @param stretch counts stretches between cleanings and adjustments, from 0
 * @param bottles names the standards, so that another lot can be seen
 */
public record ChartPoint(
    Instant at,
    Source source,
    double percent,
    double standardPercent,
    double repeatPercent,
    Verdict verdict,
    int stretch,
    String bottles) {

  /** Which look at the probe. */
  public enum Source {
    AS_FOUND,
    AFTER_CLEANING,
    AS_LEFT,
    /** Compared with a checked meter: counts for the drift. */
    GRAB_SAMPLE,
    /** Compared with the source: a look at the low end, shown but not counted. */
    PLAIN_WATER
  }

  /** Whether it counts for loss and drift. */
  boolean counts() {
    return source != Source.PLAIN_WATER;
  }

  double days(Instant origin) {
    return (at.toEpochMilli() - origin.toEpochMilli()) / 86_400_000.0;
  }
}
