package feedwitness.check;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A probe's errors over time and what they say.
 *
 * @param points oldest first
 * @param marks cleanings, adjustments and replacements, oldest first
 * @param replaced when another probe or cell was put there, the last time
 * @param own stretch with which the present probe begins; points of earlier ones are another's
 * @param tolerancePercent half-width, %
 * @param middlePercent mean error since the last cleaning or adjustment, %; NaN without points
 * @param warningPercent half-width about the middle within which 95 % of checks of an unchanged
 *     probe lie, %; NaN without points
 * @param loss whether it slowly loses sensitivity
 * @param drift since the last cleaning or adjustment
 */
public record ControlChart(
    List<ChartPoint> points,
    List<ChartMark> marks,
    Optional<Instant> replaced,
    int own,
    double tolerancePercent,
    double middlePercent,
    double warningPercent,
    Loss loss,
    Drift drift) {
  private static final double SURE = 2;
  private static final int LEAST_POINTS = 3;
  private static final Duration FORESIGHT = Duration.ofDays(366);

  public ControlChart {
    points = List.copyOf(points);
    marks = List.copyOf(marks);
  }

  /** A cleaning; an adjustment or replacement, after which the probe is another. */
  public record ChartMark(Instant at, boolean adjustment, String words) {}

  /**
   * Of a probe.
   *
   * @param strength the chart is for, mS/cm at 25 °C; NaN for the middle of the standards
   */
  public static ControlChart of(ProbeHistory history, double tolerancePercent, double strength) {
    List<ChartPoint> points = ChartPoints.of(history, strength);
    List<ChartPoint> stretch = lastStretch(points, history);
    double middle = stretch.stream().mapToDouble(ChartPoint::percent).average().orElse(Double.NaN);
    double warning =
        2 * stretch.stream().mapToDouble(ChartPoint::repeatPercent).average().orElse(Double.NaN);
    return new ControlChart(
        points,
        marks(history),
        history.replaced().map(ProbeReplaced::at),
        breaks(history) - breaks(history.ofPresentProbe()),
        tolerancePercent,
        middle,
        warning,
        Loss.of(stretch),
        Drift.of(stretch));
  }

  private static List<ChartPoint> lastStretch(List<ChartPoint> points, ProbeHistory history) {
    int breaks = breaks(history);
    return points.stream()
        .filter(point -> point.stretch() == breaks)
        .filter(ChartPoint::counts)
        .toList();
  }

  private static int breaks(ProbeHistory history) {
    return history.cleanings().size()
        + history.adjustments().size()
        + history.replacements().size();
  }

  private static List<ChartMark> marks(ProbeHistory history) {
    List<ChartMark> marks = new ArrayList<>();
    history
        .cleanings()
        .forEach(one -> marks.add(new ChartMark(one.at(), false, "cleaned: " + one.how())));
    history.adjustments().forEach(one -> marks.add(new ChartMark(one.at(), true, one.words())));
    history.replacements().forEach(one -> marks.add(new ChartMark(one.at(), true, one.words())));
    marks.sort(java.util.Comparator.comparing(ChartMark::at));
    return marks;
  }

  /** Points since the last cleaning or adjustment that count for loss and drift. */
  public List<ChartPoint> stretch() {
    return drift.points() == 0
        ? List.of()
        : points.stream()
            .filter(ChartPoint::counts)
            .skip(points.stream().filter(ChartPoint::counts).count() - drift.points())
            .toList();
  }

  /**
   * When the error will leave the tolerance if it goes on like this. Empty if the rate may as well
   * be none, or that is more than a year away. Already past if it has left it.
   */
  public Optional<Instant> leaves() {
    if (drift.points() < LEAST_POINTS || !drift.differs(SURE)) {
      return Optional.empty();
    }
    return leavesAt(drift.percentPerDay());
  }

  /** The same at the fastest rate the evidence allows (95 %). */
  public Optional<Instant> leavesEarliest() {
    if (drift.points() < LEAST_POINTS || !drift.differs(SURE)) {
      return Optional.empty();
    }
    return leavesAt(
        drift.percentPerDay()
            + Math.copySign(SURE * drift.standardPercentPerDay(), drift.percentPerDay()));
  }

  private Optional<Instant> leavesAt(double percentPerDay) {
    double room = tolerancePercent - Math.signum(percentPerDay) * drift.percentNow();
    double days = room / Math.abs(percentPerDay);
    if (!(days <= FORESIGHT.toDays())) {
      return Optional.empty();
    }
    Instant last = points.get(points.size() - 1).at();
    return Optional.of(last.plusMillis((long) (days * 86_400_000)));
  }

  /** What it says, for people. */
  public String words(ZoneId zone) {
    if (drift.points() == 0) {
      return "not checked since it was last cleaned, adjusted or replaced";
    }
    String rate =
        Double.isNaN(drift.percentPerDay())
            ? "no rate yet"
            : "%s ± %s %% a week over %d checks"
                .formatted(
                    Say.fixed(7 * drift.percentPerDay(), 2),
                    Say.fixed(7 * SURE * drift.standardPercentPerDay(), 2),
                    drift.points());
    String leaving =
        leaves()
            .map(
                at ->
                    "; at this rate it leaves ± %s on %s"
                        .formatted(Say.percent(tolerancePercent), Say.day(at, zone)))
            .orElse("");
    return "slow loss: %s; %s%s".formatted(loss.words(), rate, leaving);
  }
}
