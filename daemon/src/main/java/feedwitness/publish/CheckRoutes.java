package feedwitness.publish;

import feedwitness.check.CheckRecord;
import feedwitness.check.CheckReply;
import feedwitness.check.CheckRequest;
import feedwitness.check.CheckSubject;
import feedwitness.check.ComparisonMade;
import feedwitness.check.Comparisons;
import feedwitness.check.ProbeHistory;
import feedwitness.check.SeasonLog;
import feedwitness.engine.CheckBench;
import feedwitness.engine.LiveView;
import feedwitness.quantity.PointName;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Checks of probes and meters: leading through them, and what they found. */
final class CheckRoutes {
  private static final Map<String, CheckSubject.Kind> KINDS = Codes.all(CheckSubject.Kind.class);

  private final LiveView live;
  private final CheckBench bench;

  CheckRoutes(LiveView live, CheckBench bench) {
    this.live = live;
    this.bench = bench;
  }

  void list(Context context) {
    Answers.json(context, CheckJson.overview(bench, live));
  }

  void one(Context context) {
    Answers.json(context, detail(subject(context)));
  }

  private CheckJson.Detail detail(CheckSubject subject) {
    return CheckJson.detail(bench.stand(subject), bench.history(subject), live.site().zone());
  }

  void begin(Context context) throws IOException {
    CheckSubject subject = subject(context);
    CheckBench.Wish wish = CheckForms.wish(subject, Body.object(context));
    CheckRequest.Answer answer = kept(() -> bench.begin(wish));
    if (answer instanceof CheckRequest.Refused refused) {
      throw Problem.of(409, refused.words()).exception();
    }
    if (answer instanceof CheckRequest.Confirm confirm) {
      throw new Problem(
              409,
              String.join("; ", confirm.objections()),
              List.of(
                  new Problem.FieldError(
                      "confirmed", "read what speaks against it, then send confirmed: true")))
          .exception();
    }
    context.status(201);
    answer(context, subject, true, "the check has begun");
  }

  void step(Context context) throws IOException {
    CheckSubject subject = subject(context);
    CheckForms.Step step = CheckForms.step(Body.object(context));
    CheckReply reply = kept(() -> step.on(bench, subject));
    answer(context, subject, reply.accepted(), reply.words());
  }

  /** What went well, with how it stands now; 409 with the reason for what did not. */
  private void answer(Context context, CheckSubject subject, boolean accepted, String words) {
    if (!accepted) {
      throw Problem.of(409, words).exception();
    }
    Answers.json(context, new CheckJson.Done(words, detail(subject)));
  }

  void compare(Context context) throws IOException {
    CheckSubject subject = subject(context);
    CheckForms.Comparison comparison = CheckForms.comparison(Body.object(context));
    Comparisons.Outcome outcome = kept(() -> comparison.on(bench, subject));
    if (outcome instanceof Comparisons.Refused refused) {
      throw Problem.of(409, refused.words()).exception();
    }
    ComparisonMade made = ((Comparisons.Made) outcome).evidence();
    context.status(201);
    answer(context, subject, true, made.words());
  }

  void record(Context context) {
    String id = context.pathParam("id");
    for (CheckSubject subject : bench.subjects()) {
      Optional<ProbeHistory.Check> check =
          bench.history(subject).checks().stream()
              .filter(one -> one.started().entry().check().equals(id))
              .findFirst();
      if (check.isPresent()) {
        CheckRecord record = CheckRecord.of(check.get(), live.site().name(), live.site().zone());
        Answers.json(context, CheckJson.record(id, record));
        return;
      }
    }
    throw Problem.of(
            404,
            "there is no check %s; %s/checks lists probes and meters, each with its checks"
                .formatted(Quoted.of(id), Routes.API))
        .exception();
  }

  void log(Context context) {
    context.header("Cache-Control", "no-store");
    context.header("Content-Disposition", "attachment; filename=\"feedwitness-checks.csv\"");
    StringBuilder text = new StringBuilder(line(SeasonLog.HEADING));
    SeasonLog.rows(bench.evidence()).forEach(row -> text.append(line(row)));
    Answers.write(context, DataRoutes.CSV, text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static String line(List<String> cells) {
    return cells.stream().map(CheckRoutes::cell).collect(Collectors.joining(",")) + "\r\n";
  }

  /** RFC 4180; what a table program would take for a formula stays text. */
  private static String cell(String text) {
    String plain = text.matches("(?s)[=+@\\t\\r].*") ? "'" + text : text;
    return plain.matches("(?s).*[\",\\r\\n].*") ? "\"" + plain.replace("\"", "\"\"") + "\"" : plain;
  }

  private CheckSubject subject(Context context) {
    String kind = context.pathParam("kind");
    String name = context.pathParam("name");
    CheckSubject.Kind known = KINDS.get(kind);
    if (known == null || !PointName.isValid(name)) {
      throw unknown(kind, name).exception();
    }
    CheckSubject subject = new CheckSubject(known, new PointName(name));
    if (known == CheckSubject.Kind.PROBE && !bench.subjects().contains(subject)) {
      throw unknown(kind, name).exception();
    }
    return subject;
  }

  private Problem unknown(String kind, String name) {
    return Problem.of(
        404,
        "there is no %s %s to be checked; there are: %s; any name of a-z, 0-9, - and _ makes a new meter"
            .formatted(
                KINDS.containsKey(kind) ? kind : "probe or meter",
                Quoted.of(name),
                bench.subjects().stream()
                    .map(CheckSubject::toText)
                    .collect(Collectors.joining(", "))));
  }

  /** Something that has to be on disk before anybody is told. */
  private interface Keeping<T> {
    T run() throws IOException;
  }

  private static <T> T kept(Keeping<T> deed) {
    try {
      return deed.run();
    } catch (IOException e) {
      throw Problem.of(503, String.valueOf(e.getMessage())).exception();
    }
  }
}
