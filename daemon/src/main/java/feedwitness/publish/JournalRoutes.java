package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.JournalNote;
import feedwitness.engine.LiveView;
import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.quantity.PointName;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The journal: what happened to alarms, what was fed, and what people wrote. */
final class JournalRoutes {
  private static final int LONGEST_TEXT = 4000;
  private static final int LONGEST_PLANTS = 2000;
  private static final int LONGEST_BLOCK = 64;

  private final LiveView live;
  private final AlarmDesk desk;
  private final EvidenceHistory history;

  JournalRoutes(LiveView live, AlarmDesk desk, EvidenceHistory history) {
    this.live = live;
    this.desk = desk;
    this.history = history;
  }

  void list(Context context) {
    Answers.json(context, JournalQuery.read(context.queryParamMap()).from(history));
  }

  void write(Context context) {
    JournalNote note = note(new BodyFields(Body.object(context)));
    try {
      JournalJson entry = JournalJson.of(desk.note(note));
      context.status(201).header("Location", Routes.API + "/journal/" + entry.number());
      Answers.json(context, entry);
    } catch (IOException e) {
      throw Problem.of(507, Quoted.plain("the note is not kept: " + e.getMessage())).exception();
    }
  }

  private JournalNote note(BodyFields fields) {
    String author = fields.text("author", AlarmRoutes.LONGEST_WHO);
    String text = fields.lines("text", LONGEST_TEXT);
    String plants = fields.optionalLines("plants", LONGEST_PLANTS);
    String block = fields.optionalText("block", LONGEST_BLOCK);
    String point = fields.optionalText("point", LONGEST_BLOCK);
    if (!point.isEmpty()
        && (!PointName.isValid(point) || live.point(new PointName(point)).isEmpty())) {
      fields.fault("point", "there is no point " + Quoted.of(point));
    }
    Optional<Attachment> photo = Photo.read(fields);
    fields.finish();
    return new JournalNote(point, block, author, text, plants, photo);
  }

  void entry(Context context) {
    Answers.json(context, JournalJson.of(record(context)));
  }

  void photo(Context context) {
    Attachment photo =
        history
            .attachment(record(context).id())
            .orElseThrow(() -> Problem.of(404, "this entry has no photo").exception());
    // a record never changes
    context.header("Cache-Control", "private, max-age=31536000, immutable");
    Answers.write(context, photo.mediaType(), photo.octets().toArray());
  }

  private Evidence record(Context context) {
    String number = context.pathParam("number");
    return Optional.of(number)
        .filter(text -> text.matches("[0-9]{1,18}"))
        .flatMap(text -> history.evidence(Long.parseLong(text)))
        .filter(record -> JournalQuery.KINDS.contains(record.kind()))
        .orElseThrow(
            () ->
                Problem.of(
                        404,
                        "there is no journal entry %s; %s/journal lists those there are"
                            .formatted(Quoted.of(number), Routes.API))
                    .exception());
  }

  void export(Context context) throws IOException {
    context.header("Cache-Control", "no-store");
    context.header("Content-Disposition", "attachment; filename=\"feedwitness-journal.csv\"");
    Answers.type(context, DataRoutes.CSV);
    if (context.req().getMethod().equals("HEAD")) {
      return;
    }
    Writer out = new OutputStreamWriter(context.res().getOutputStream(), StandardCharsets.UTF_8);
    new JournalCsv(live.site().zone(), out).write(history);
    out.flush();
  }
}
