package feedwitness.app;

import feedwitness.ledger.History;
import feedwitness.ledger.QualifiedHistory;
import feedwitness.publish.CsvExport;
import feedwitness.publish.CsvLayout;
import feedwitness.publish.ExportQuery;
import feedwitness.publish.JournalCsv;
import feedwitness.publish.RemoteService;
import feedwitness.quantity.PointName;
import feedwitness.store.StoredHistory;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Readings as a table. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Writes readings as a table for a spreadsheet.",
    description =
        "%nWorks whether the service runs or not. A reading taken before the "
            + "clock of the computer was right has no time; how many there are is said "
            + "at the end.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:everything asked for was written",
      "1:it could not be done, or only in part; the reason is printed",
      "2:an option or the configuration cannot be used"
    },
    footer = {
      "",
      "For a spreadsheet that expects commas in numbers:",
      "  feedwitness export --separator semicolon --decimal comma -o june.csv --from 2026-06-01"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ExportCommand implements Callable<Integer> {
  enum Separator {
    COMMA(','),
    SEMICOLON(';'),
    TAB('\t');

    private final char character;

    Separator(char character) {
      this.character = character;
    }
  }

  enum Decimal {
    POINT,
    COMMA
  }

  @Spec private CommandSpec spec;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "A new file. Default: standard output.")
  private @Nullable Path output;

  @Option(
      names = "--point",
      paramLabel = "NAME",
      description = "One measuring point; may be given several times. Default: all.")
  private List<String> points = new ArrayList<>();

  @Option(
      names = "--from",
      paramLabel = "TIME",
      description = "The first time, such as 2026-06-01 or 2026-06-01T08:00. Default: all.")
  private @Nullable String from;

  @Option(
      names = "--to",
      paramLabel = "TIME",
      description = "The time up to which, itself left out. Default: all.")
  private @Nullable String to;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Time zone, such as Europe/London or UTC. Default: the nursery's.")
  private @Nullable String zone;

  @Option(
      names = "--separator",
      defaultValue = "comma",
      paramLabel = "WHICH",
      description = "Between fields: comma, semicolon or tab. Default: ${DEFAULT-VALUE}.")
  private Separator separator;

  @Option(
      names = "--decimal",
      defaultValue = "point",
      paramLabel = "WHICH",
      description = "In numbers: point or comma. Default: ${DEFAULT-VALUE}.")
  private Decimal decimal;

  @Option(
      names = "--journal",
      description =
          "The journal instead of readings: alarms, notes, what was fed; all of it, with commas"
              + " between fields.")
  private boolean journal;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    refuseWhatTheJournalHasNot();
    PrintWriter err = spec.commandLine().getErr();
    Whereabouts.Found found = whereabouts.find(false);
    if (found instanceof Whereabouts.Found.Nothing nothing) {
      err.println(nothing.message());
      return nothing.exitCode();
    }
    try {
      ExportTally tally =
          found instanceof Whereabouts.Found.Running running
              ? overHttp(running.service())
              : fromFile((Whereabouts.Found.Stopped) found);
      String where = output == null ? "" : " to " + output;
      err.println(journal ? "Journal written%s.".formatted(where) : tally.words(where));
      return Exit.DONE;
    } catch (IOException | IllegalStateException e) {
      err.println(
          "export: " + e.getMessage() + (output == null ? "; the table is not complete" : ""));
      return Exit.FAILED;
    }
  }

  private void refuseWhatTheJournalHasNot() {
    if (journal
        && (!points.isEmpty()
            || from != null
            || to != null
            || zone != null
            || separator != Separator.COMMA
            || decimal != Decimal.POINT)) {
      throw new ParameterException(
          spec.commandLine(),
          "--journal writes all of the journal with commas; leave out --point, --from, --to,"
              + " --zone, --separator and --decimal");
    }
  }

  private ExportTally overHttp(RemoteService service) throws IOException {
    if (journal) {
      return write(
          out -> {
            try (InputStream in = service.journal()) {
              in.transferTo(out);
            }
          });
    }
    ExportQuery query = query(service.zone());
    return write(
        out -> {
          try (InputStream in = service.export(query)) {
            in.transferTo(out);
          }
        });
  }

  private ExportTally fromFile(Whereabouts.Found.Stopped stopped) throws IOException {
    ZoneId nurserys = stopped.config().site().zone();
    ExportQuery query = query(nurserys);
    StoredHistory.Opening opening = StoredHistory.open(stopped.config().storeDirectory());
    if (opening instanceof StoredHistory.Opening.Refused refused) {
      throw new IOException(refused.message());
    }
    try (StoredHistory history = ((StoredHistory.Opening.Opened) opening).history()) {
      List<PointName> there =
          Stream.concat(
                  stopped.config().site().points().stream().map(point -> point.name()),
                  history.recorded().stream())
              .distinct()
              .toList();
      for (PointName point : query.points()) {
        if (!there.contains(point)) {
          throw new IOException(ExportQuery.noSuchPoint(point.text(), there));
        }
      }
      ExportTally tally =
          write(
              out -> {
                if (journal) {
                  writeJournal(history, nurserys, out);
                } else {
                  writeCsv(QualifiedHistory.of(history), query, there, out);
                }
              });
      Optional<String> damage = history.damage();
      if (damage.isPresent()) {
        throw new IOException(damage.get());
      }
      return tally;
    }
  }

  private static void writeJournal(StoredHistory history, ZoneId zone, OutputStream out)
      throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    new JournalCsv(zone, writer).write(history);
    writer.flush();
  }

  private static void writeCsv(
      History history, ExportQuery query, List<PointName> there, OutputStream out)
      throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    new CsvExport(query.layout(), writer)
        .write(
            history,
            query.points().isEmpty() ? there : query.points(),
            query.from().orElse(Instant.MIN),
            query.to().orElse(Instant.MAX));
    writer.flush();
  }

  private ExportTally write(NewFile.Content content) throws IOException {
    if (output != null) {
      ExportTally[] tally = new ExportTally[1];
      NewFile.make(
          output,
          out -> {
            ExportTally counting = new ExportTally(out);
            content.writeTo(counting);
            tally[0] = counting;
          });
      return tally[0];
    }
    ExportTally counting = new ExportTally(System.out);
    content.writeTo(counting);
    counting.flush();
    if (System.out.checkError()) {
      throw new IOException("standard output was closed by whoever reads it");
    }
    return counting;
  }

  private ExportQuery query(ZoneId nurserys) {
    try {
      ZoneId chosen = zone == null ? nurserys : ZoneId.of(zone);
      Optional<Instant> start =
          Optional.ofNullable(from).map(text -> TimeOption.parse("--from", text, chosen));
      Optional<Instant> end =
          Optional.ofNullable(to).map(text -> TimeOption.parse("--to", text, chosen));
      if (start.isPresent() && end.isPresent() && !start.get().isBefore(end.get())) {
        throw new IllegalArgumentException("--from %s is not before --to %s".formatted(from, to));
      }
      return new ExportQuery(
          points.stream().map(PointName::new).toList(),
          start,
          end,
          new CsvLayout(chosen, separator.character, decimal == Decimal.COMMA));
    } catch (DateTimeException e) {
      throw new ParameterException(
          spec.commandLine(),
          "--zone '%s' is no time zone such as Europe/London or UTC".formatted(zone),
          e);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
    }
  }
}
