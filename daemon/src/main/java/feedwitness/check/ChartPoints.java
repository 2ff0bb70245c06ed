package feedwitness.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Puts a probe's records on one line of time and cuts it at cleanings and adjustments. */
final class ChartPoints {
  /** No two checks agree better than this, whatever the budget says, %. */
  private static final double LEAST_REPEAT_PERCENT = 0.1;

  private ChartPoints() {}

  private record Event(CheckEvidence record, int order) {}

  static List<ChartPoint> of(ProbeHistory history, double strength) {
    List<Event> events = new ArrayList<>();
    for (ProbeHistory.Check check : history.checks()) {
      for (Round round : Round.values()) {
        List<StandardMeasured> whole = check.round(round);
        if (!whole.isEmpty()) {
          events.add(new Event(whole.get(whole.size() - 1), events.size()));
        }
      }
    }
    history.cleanings().forEach(one -> events.add(new Event(one, events.size())));
    history.adjustments().forEach(one -> events.add(new Event(one, events.size())));
    history.comparisons().forEach(one -> events.add(new Event(one, events.size())));
    events.sort(
        Comparator.<Event, java.time.Instant>comparing(event -> event.record().at())
            .thenComparingInt(Event::order));
    List<ChartPoint> points = new ArrayList<>();
    int stretch = 0;
    for (Event event : events) {
      if (event.record() instanceof ProbeCleaned || event.record() instanceof CurveAdjusted) {
        stretch++;
      } else if (event.record() instanceof StandardMeasured last) {
        points.add(point(history, last, strength, stretch));
      } else if (event.record() instanceof ComparisonMade one
          && one.type() != ComparisonMade.Type.THERMOMETER) {
        points.add(point(one, stretch));
      }
    }
    return points;
  }

  private static ChartPoint point(
      ProbeHistory history, StandardMeasured last, double strength, int stretch) {
    ProbeHistory.Check check =
        history.checks().stream()
            .filter(one -> one.started().entry().check().equals(last.entry().check()))
            .findFirst()
            .orElseThrow();
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
