package feedwitness.publish;

import feedwitness.engine.FeedLineDesk;
import feedwitness.engine.FeedLineStatus;
import feedwitness.engine.LiveView;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.quantity.PointName;
import feedwitness.watch.drift.LineChange;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Optional;
import java.util.stream.Collectors;

/** Feed lines: how they stand, and what was done to them. */
final class FeedLineRoutes {
  static final String PATH = Routes.API + "/feed-lines";
  private static final int LONGEST_NOTE = 1000;

  private final LiveView live;
  private final FeedLineDesk desk;
  private final FeedLineMapping mapping;

  FeedLineRoutes(LiveView live, FeedLineDesk desk, EvidenceHistory history) {
    this.live = live;
    this.desk = desk;
    this.mapping = new FeedLineMapping(live, history);
  }

  void list(Context context) {
    Answers.json(
        context,
        new FeedLineJson.ListJson(
            Numbers.time(live.now()),
            desk.feedLines().stream().map(mapping::map).toList(),
            FeedLineMapping.choices()));
  }

  void change(Context context) {
    PointName name = named(context);
    BodyFields fields = new BodyFields(Body.object(context));
    String who = fields.text("who", AlarmRoutes.LONGEST_WHO);
    Optional<LineChange> change = fields.oneOf("change", Codes.all(LineChange.class));
    String note = fields.optionalLines("note", LONGEST_NOTE);
    fields.finish();
    try {
      FeedLineStatus status =
          desk.change(name, change.orElseThrow(), who, note).orElseThrow(() -> unknown(context));
      context.status(201).header("Location", PATH);
      Answers.json(context, mapping.map(status));
    } catch (IOException e) {
      throw Problem.of(507, Quoted.plain("the change is not kept: " + e.getMessage())).exception();
    }
  }

  private PointName named(Context context) {
    String name = context.pathParam("name");
    return Optional.of(name)
        .filter(PointName::isValid)
        .map(PointName::new)
        .filter(each -> desk.feedLine(each).isPresent())
        .orElseThrow(() -> unknown(context));
  }

  private ProblemException unknown(Context context) {
    String names =
        desk.feedLines().stream()
            .map(status -> status.line().name().text())
            .collect(Collectors.joining(", "));
    return Problem.of(
            404,
            "there is no feed line %s; %s"
                .formatted(
                    Quoted.of(context.pathParam("name")),
                    names.isEmpty()
                        ? "write a [[feed-line]] table in the configuration"
                        : "there are: " + names))
        .exception();
  }
}
