package feedwitness.publish;

import feedwitness.engine.LiveView;
import feedwitness.ledger.History;
import feedwitness.measurement.Explanation;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Takes one measurement of a point apart: the last at or before a time. */
final class ExplainRoute {
  private final LiveView live;
  private final History history;

  ExplainRoute(LiveView live, History history) {
    this.live = live;
    this.history = history;
  }

  void explain(Context context, PointName point) {
    Instant at = at(context);
    Measurement measurement =
        history
            .asOf(point, at)
            .orElseThrow(() -> Problem.of(404, History.nothing(point, at)).exception());
    Answers.json(
        context,
        ExplanationJson.of(
            Explanation.of(
                measurement,
                live.messages(point, measurement.stamp()),
                history.saidLater(measurement))));
  }

  private Instant at(Context context) {
    List<Problem.FieldError> errors = new ArrayList<>();
    CourseQuery.refuseUnknown(context.queryParamMap(), List.of("at"), errors);
    Instant at = CourseQuery.time("at", context.queryParamMap(), errors).orElseGet(live::now);
    if (!errors.isEmpty()) {
      throw new Problem(400, errors.get(0).message(), errors).exception();
    }
    return at;
  }
}
