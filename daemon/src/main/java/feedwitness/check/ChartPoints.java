package feedwitness.check;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.stream.Collectors;

/** Puts a probe's records on one line of time and cuts it at cleanings and adjustments. */
final class ChartPoints {
  /** No two checks agree better than this, whatever the budget says, %. */
  private static final double LEAST_REPEAT_PERCENT = 0.1;

  private ChartPoints() {}

  static List<ChartPoint> of(ProbeHistory history, double strength) {
    IdentityHashMap<StandardMeasured, ProbeHistory.Check> ends = new IdentityHashMap<>();
    for (ProbeHistory.Check check : history.checks()) {
      for (Round round : Round.values()) {
        List<StandardMeasured> whole = check.round(round);
        if (!whole.isEmpty()) {
          ends.put(whole.get(whole.size() - 1), check);
        }
      }
    }
    List<ChartPoint> points = new ArrayList<>();
    int stretch = 0;
    for (CheckEvidence record : history.records()) {
      if (record instanceof ProbeCleaned
          || record instanceof CurveAdjusted
          || record instanceof ProbeReplaced) {
        stretch++;
      } else if (record instanceof StandardMeasured last && ends.containsKey(last)) {
        points.add(point(ends.get(last), last, strength, stretch));
      } else if (record instanceof ComparisonMade one
          && one.type() != ComparisonMade.Type.THERMOMETER) {
        points.add(point(one, stretch));
      }
    }
    return points;
  }

  private static ChartPoint point(
      ProbeHistory.Check check, StandardMeasured last, double strength, int stretch) {
    List<StandardResult> results = check.results(last.round());
    Errors.Node node = Errors.of(results).at(strength);
    double repeat =
        results.stream().mapToDouble(ChartPoints::repeat).max().orElse(LEAST_REPEAT_PERCENT);
    return new ChartPoint(
        last.at(),
        ChartPoint.Source.valueOf(last.round().name()),
        node.percent(),
        node.standardPercent(),
        Math.max(repeat, LEAST_REPEAT_PERCENT),
        check.verdict(last.round()),
        stretch,
        results.stream().map(StandardResult::title).collect(Collectors.joining("; ")));
  }

  private static double repeat(StandardResult result) {
    double sum = 0;
    for (Doubt doubt : result.doubts()) {
      if (doubt.source() != Doubt.Source.CERTIFICATE && doubt.source() != Doubt.Source.COURSE) {
        sum += doubt.standardPercent() * doubt.standardPercent();
      }
    }
    return Math.sqrt(sum);
  }

  private static ChartPoint point(ComparisonMade one, int stretch) {
    double standard = one.expanded() / 2;
    return new ChartPoint(
        one.at(),
        ChartPoint.Source.valueOf(one.type().name()),
        one.error(),
        standard,
        Math.max(standard, LEAST_REPEAT_PERCENT),
        one.verdict(),
        stretch,
        one.against());
  }
}
