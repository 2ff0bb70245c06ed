package feedwitness.check;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * When the next check is due. It begins with the shortest interval and doubles with each good check
 * in a row as long as the error, moving as fast as the evidence allows, would stay within
 * tolerance; any other verdict, and a drift that is likely, bring the shortest back.
 *
 * @param shortest first interval
 * @param longest it never grows beyond
 */
public record CheckInterval(Duration shortest, Duration longest) {
  /** A week, eight weeks. */
  public static final CheckInterval USUAL =
      new CheckInterval(Duration.ofDays(7), Duration.ofDays(56));

  private static final int LEAST_POINTS = 3;
  private static final Duration CLOCK_SLACK = Duration.ofHours(1);

  /**
   * Checks the order.
   *
   * @throws IllegalArgumentException if it makes no sense
   */
  public CheckInterval {
    if (shortest.isNegative() || shortest.isZero() || longest.compareTo(shortest) < 0) {
      throw new IllegalArgumentException(
          "shortest interval %s and longest %s; the longest must not be below the shortest"
              .formatted(shortest, longest));
    }
  }

  /** How it stands. */
  public enum Status {
    NEVER_CHECKED("never checked"),
    GOOD("checked"),
    DUE("due"),
    OVERDUE("overdue");

    private final String words;

    Status(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  /**
   * When and why.
   *
   * @param at when the next is due; empty if it was never checked
   * @param interval between the last and the next
   */
  public record Due(Status status, Optional<Instant> at, Duration interval, String words) {}

  /** At a time. */
  public Due due(ControlChart chart, Instant now, ZoneId zone) {
    List<ChartPoint> looks =
        chart.points().stream()
            .filter(ChartPoint::counts)
            .filter(point -> point.stretch() >= chart.own())
            .filter(point -> point.source() != ChartPoint.Source.GRAB_SAMPLE)
            .toList();
    if (looks.isEmpty()) {
      return new Due(
          Status.NEVER_CHECKED,
          Optional.empty(),
          shortest,
          chart
              .replaced()
              .map(
                  at ->
                      "not checked since it was replaced on %s; its readings are as good as the maker says"
                          .formatted(Say.day(at, zone)))
              .orElse("never checked; its readings are as good as the maker says"));
    }
    Instant last = looks.get(looks.size() - 1).at();
    if (last.isAfter(now.plus(CLOCK_SLACK))) {
      return new Due(
          Status.DUE,
          Optional.of(now),
          shortest,
          "the last check is dated %s, which is in the future; set the clock right and check again"
              .formatted(Say.day(last, zone)));
    }
    Duration interval = interval(chart, looks);
    Instant at = last.plus(interval);
    Status status =
        now.isBefore(at)
            ? Status.GOOD
            : now.isBefore(at.plus(interval.dividedBy(2))) ? Status.DUE : Status.OVERDUE;
    return new Due(
        status,
        Optional.of(at),
        interval,
        "%s; last check %s, next after %d days"
            .formatted(status.words(), Say.moment(last, zone), interval.toDays()));
  }

  private Duration interval(ControlChart chart, List<ChartPoint> looks) {
    boolean moving =
        chart.loss() == Loss.SURE
            || chart.loss() == Loss.LIKELY
            || (chart.drift().points() >= LEAST_POINTS && chart.drift().differs(2));
    int passes = moving ? 0 : passesInARow(looks);
    Duration interval = shortest;
    for (int i = 1; i < passes; i++) {
      Duration twice = interval.multipliedBy(2);
      Duration wanted = twice.compareTo(longest) > 0 ? longest : twice;
      if (!staysWithin(chart, wanted)) {
        break;
      }
      interval = wanted;
    }
    return interval;
  }

  private static int passesInARow(List<ChartPoint> looks) {
    int passes = 0;
    for (int i = looks.size() - 1; i >= 0; i--) {
      if (looks.get(i).verdict() != Verdict.PASS
          || looks.get(i).source() != ChartPoint.Source.AS_FOUND) {
        break;
      }
      passes++;
    }
    return passes;
  }

  private static boolean staysWithin(ControlChart chart, Duration interval) {
    Drift drift = chart.drift();
    double fastest = Math.abs(drift.percentPerDay()) + 2 * drift.standardPercentPerDay();
    double days = interval.toHours() / 24.0;
    double end = Math.abs(drift.percentNow()) + fastest * days;
    return end <= chart.tolerancePercent();
  }
}
