package feedwitness.publish;

import feedwitness.engine.DataDesk;
import feedwitness.engine.ImportOutcome;
import feedwitness.engine.LiveView;
import feedwitness.ledger.History;
import feedwitness.quantity.PointName;
import io.javalin.http.Context;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.tinylog.Logger;

/**
 * Whole histories in and out. An answer that cannot be finished is cut off, so that no client takes
 * a part for the whole.
 */
final class DataRoutes {
  static final String CSV = "text/csv";
  static final String ZIP = "application/zip";

  /** Each holds a thread and a snapshot of the store for as long as its client takes. */
  private static final int MOST_AT_A_TIME = 2;

  private final LiveView live;
  private final History history;
  private final DataDesk desk;
  private final OpenHours hours;
  private final Semaphore sending = new Semaphore(MOST_AT_A_TIME);

  DataRoutes(LiveView live, History history, DataDesk desk, OpenHours hours) {
    this.live = live;
    this.history = history;
    this.desk = desk;
    this.hours = hours;
  }

  void take(Context context) {
    String name = context.pathParam("name");
    Optional<PointName> point =
        PointName.isValid(name)
            ? live.point(new PointName(name)).map(status -> status.point().name())
            : Optional.empty();
    if (point.isEmpty()) {
      throw Problem.of(
              404,
              ExportQuery.noSuchPoint(
                  Quoted.of(name), live.site().points().stream().map(p -> p.name()).toList()))
          .exception();
    }
    ImportOutcome outcome = desk.take(ImportRequest.read(point.get(), Body.object(context)));
    if (outcome instanceof ImportOutcome.Refused refused) {
      throw Problem.field(422, refused.field(), refused.message()).exception();
    }
    Answers.json(context, ImportJson.of((ImportOutcome.Taken) outcome));
  }

  void export(Context context) throws IOException {
    List<PointName> there = desk.points();
    ExportQuery query = ExportQuery.read(context.queryParamMap(), there, live.site().zone());
    announce(context, CSV, "feedwitness.csv");
    if (context.req().getMethod().equals("HEAD")) {
      return;
    }
    slowly(context, () -> writeCsv(query, there, context.res().getOutputStream()));
  }

  private void writeCsv(ExportQuery query, List<PointName> there, OutputStream out)
      throws IOException {
    Writer writer =
        new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), 1 << 15);
    CsvExport export = new CsvExport(query.layout(), new Stoppable(writer, hours));
    export.write(
        history,
        query.points().isEmpty() ? there : query.points(),
        query.from().orElse(Instant.MIN),
        query.to().orElse(Instant.MAX));
    writer.flush();
  }

  /** Ends a long answer when the service is to stop. */
  private record Stoppable(Writer out, OpenHours hours) implements Appendable {
    @Override
    public Appendable append(CharSequence text) throws IOException {
      if (hours.isClosing()) {
        throw new IOException("the service is stopping");
      }
      out.append(text);
      return this;
    }

    @Override
    public Appendable append(CharSequence text, int start, int end) throws IOException {
      return append(text.subSequence(start, end));
    }

    @Override
    public Appendable append(char character) throws IOException {
      out.append(character);
      return this;
    }
  }

  void backup(Context context) throws IOException {
    slowly(
        context,
        () -> {
          Path made = desk.backup();
          try {
            announce(context, ZIP, "feedwitness-backup.zip");
            context.header("Content-Length", Long.toString(Files.size(made)));
            OutputStream out = context.res().getOutputStream();
            copy(made, out);
            out.flush();
          } finally {
            Files.deleteIfExists(made);
          }
        });
  }

  private void copy(Path file, OutputStream out) throws IOException {
    try (var in = Files.newInputStream(file)) {
      byte[] some = new byte[1 << 15];
      for (int got = in.read(some); got >= 0; got = in.read(some)) {
        if (hours.isClosing()) {
          throw new IOException("the service is stopping");
        }
        out.write(some, 0, got);
      }
    }
  }

  private static void announce(Context context, String mediaType, String fileName) {
    context.header("Cache-Control", "no-store");
    context.header("Content-Disposition", "attachment; filename=\"" + fileName + "\"");
    Answers.type(context, mediaType);
  }

  private interface Work {
    void run() throws IOException;
  }

  private void slowly(Context context, Work work) {
    if (!sending.tryAcquire()) {
      throw Problem.of(
              503,
              "%d exports or backups are being sent already; try again in a minute"
                  .formatted(MOST_AT_A_TIME))
          .exception();
    }
    try {
      work.run();
    } catch (IOException | RuntimeException e) {
      if (!context.res().isCommitted()) {
        context.res().reset();
        throw Problem.of(507, Quoted.plain(String.valueOf(e.getMessage()))).exception();
      }
      Logger.warn("{} was cut off: {}", context.path(), e.getMessage());
      StreamRoute.endPoint(context).close();
    } finally {
      sending.release();
    }
  }
}
