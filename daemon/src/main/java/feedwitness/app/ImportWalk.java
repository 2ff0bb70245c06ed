package feedwitness.app;

import feedwitness.app.table.RowReader;
import feedwitness.app.table.Stretch;
import feedwitness.app.table.StretchCutter;
import feedwitness.app.table.TableRow;
import feedwitness.app.table.TimeReader;
import feedwitness.engine.ImportBatch;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Goes through a table by its plan, from top to bottom, in constant memory. */
final class ImportWalk {
  private ImportWalk() {}

  /** Takes what is met. */
  interface Visitor {
    /** A reading with its true time. */
    void reading(Stretch stretch, TableRow.Reading row, Instant time) throws IOException;

    /** A reading of a stretch whose clock was never set. */
    void undated(Stretch stretch, TableRow.Reading row);

    void broken(long line, TableRow.Broken row);

    /** Anything that is not a reading and not broken. */
    void other(TableRow row);

    /** After each line. */
    void line(long line, String text);
  }

  static void walk(ImportPlan plan, Visitor visitor) throws IOException {
    RowReader rows =
        new RowReader(plan.columns(), plan.numbers(), new TimeReader(plan.dates(), plan.zone()));
    StretchCutter cutter = new StretchCutter(plan.notBefore());
    plan.file()
        .forEach(
            plan.columns().headingLine() + 1,
            (line, text) -> {
              TableRow row = rows.read(line, text);
              if (row instanceof TableRow.Reading reading) {
                place(plan, cutter.add(reading), reading, visitor);
              } else if (row instanceof TableRow.Broken broken) {
                visitor.broken(line, broken);
              } else {
                if (row instanceof TableRow.HeadingAgain) {
                  cutter.headingAgain();
                }
                visitor.other(row);
              }
              visitor.line(line, text);
            });
  }

  private static void place(
      ImportPlan plan, Stretch stretch, TableRow.Reading reading, Visitor visitor)
      throws IOException {
    Optional<Instant> time = time(plan, stretch, reading);
    if (time.isEmpty()) {
      visitor.undated(stretch, reading);
    } else if (time.get().isAfter(plan.latest().plusMillis(ImportBatch.FUTURE_MILLIS))) {
      visitor.broken(
          reading.line(),
          new TableRow.Broken(
              "time: in the future (--allow-future takes it)", time.get().toString()));
    } else {
      visitor.reading(stretch, reading, time.get());
    }
  }

  private static Optional<Instant> time(
      ImportPlan plan, Stretch stretch, TableRow.Reading reading) {
    @Nullable Instant start = plan.assumedStarts().get(stretch.number());
    if (start != null) {
      return Optional.of(start.plus(Duration.between(stretch.first(), reading.time())));
    }
    return stretch.clockSet() ? Optional.of(reading.time()) : Optional.empty();
  }
}
