package feedwitness.publish;

import feedwitness.engine.FeedLineDesk;
import feedwitness.engine.FeedLineStatus;
import feedwitness.engine.LiveView;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.quantity.PointName;
import feedwitness.watch.drift.LineChange;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.stream.Collectors;

/** Feed lines: how they stand, and what was done to them. */
final class FeedLineRoutes {
  static final String PATH = Routes.API + "/feed-lines";
  private static final int LONGEST_NOTE = 1000;

  private static final Set<String> ASKED = Set.of("from", "to", "all");

  /** One at a time: each reads all that is stored. */
  private final Semaphore replaying = new Semaphore(1);

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

  /** The watch over what is stored, as a table. */
  void replay(Context context) {
    PointName name = named(context);
    Map<String, List<String>> asked = context.queryParamMap();
    asked.keySet().stream()
        .filter(key -> !ASKED.contains(key))
        .findFirst()
        .ifPresent(
            key -> {
              throw Problem.field(
                      400,
                      Quoted.plain(key),
                      "there is no parameter %s; there are from, to and all"
                          .formatted(Quoted.of(key)))
                  .exception();
            });
    Optional<Instant> from = time(context, "from");
    Optional<Instant> to = time(context, "to");
    if (from.isPresent() && to.isPresent() && !from.get().isBefore(to.get())) {
      throw Problem.field(400, "from", "from is not before to; give a start before the end")
          .exception();
    }
    if (!replaying.tryAcquire()) {
      throw Problem.of(503, "another replay is under way; try again in a minute").exception();
    }
    try {
      FeedLineDesk.Replayed replayed =
          desk.replay(name, from, to).orElseThrow(() -> unknown(context));
      context.header("Cache-Control", "no-store");
      Answers.type(context, DataRoutes.CSV);
      context.result(
          FindingsCsv.table(replayed.findings(), "true".equals(context.queryParam("all"))));
    } finally {
      replaying.release();
    }
  }

  private static Optional<Instant> time(Context context, String name) {
    String text = context.queryParam(name);
    try {
      return Optional.ofNullable(text).map(each -> OffsetDateTime.parse(each).toInstant());
    } catch (DateTimeException e) {
      throw Problem.field(
              400,
              name,
              "%s %s is no time such as 2026-06-01T08:00:00Z (write a + as %%2B)"
                  .formatted(name, Quoted.of(String.valueOf(text))))
          .exception();
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
