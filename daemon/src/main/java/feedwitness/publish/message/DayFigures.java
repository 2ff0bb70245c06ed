package feedwitness.publish.message;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.site.MeasuringPoint;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * What a point measured in a day. Conductivities in mS/cm at 25 °C; NaN without any reading.
 *
 * @param name of the point
 * @param title of the point
 * @param typed whether readings are typed in: then there are no gaps
 * @param gaps stretches of at least {@link #GAP} without a reading
 * @param silent how long they were together
 * @param alarms raised about the point that day
 */
record DayFigures(
    String name,
    String title,
    boolean typed,
    double mean,
    double low,
    double high,
    int readings,
    int gaps,
    Duration silent,
    int alarms) {
  /** Shorter silences are a cable unplugged for cleaning. */
  static final Duration GAP = Duration.ofMinutes(10);

  /** One a minute. */
  private static final int BUCKETS = 1500;

  /** Looks a day up. Reads minutes, not single readings. */
  static DayFigures of(
      MeasuringPoint point, History history, Instant from, Instant to, int alarms) {
    History.Course course = history.course(point.name(), from, to, BUCKETS);
    List<Bucket> spoke = course.buckets().stream().filter(each -> each.readings() > 0).toList();
    int readings = spoke.stream().mapToInt(Bucket::readings).sum();
    double sum = spoke.stream().mapToDouble(b -> b.meanMilliSiemensPerCm() * b.readings()).sum();
    boolean typed = point.probe().isEmpty();
    Duration silent = Duration.ZERO;
    int gaps = 0;
    Instant before = from;
    for (int i = 0; i <= spoke.size() && !typed; i++) {
      Instant next = i < spoke.size() ? spoke.get(i).start() : to;
      Duration gap = Duration.between(before, next);
      if (gap.compareTo(GAP) >= 0) {
        gaps++;
        silent = silent.plus(gap);
      }
      before = next.plus(course.bucketWidth());
    }
    return new DayFigures(
        point.name().text(),
        point.title(),
        typed,
        readings == 0 ? Double.NaN : sum / readings,
        spoke.stream().mapToDouble(Bucket::minMilliSiemensPerCm).min().orElse(Double.NaN),
        spoke.stream().mapToDouble(Bucket::maxMilliSiemensPerCm).max().orElse(Double.NaN),
        readings,
        gaps,
        silent,
        alarms);
  }
}
