package feedwitness.app;

import feedwitness.app.table.Stretch;
import feedwitness.app.table.TableRow;
import feedwitness.app.table.Tally;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a walk through a table found, bounded in size. */
final class ImportFindings implements ImportWalk.Visitor {
  private static final int MOST_EXAMPLES = 5;
  private static final int MOST_STRETCHES = 20;

  final Tally tally = new Tally();
  final List<String> examples = new ArrayList<>();
  final List<Seen> stretches = new ArrayList<>();
  private final ImportPlan plan;
  private String understood = "";
  private int stretchCount;
  long lines;
  long readings;
  long undated;
  long empty;
  long headings;
  long otherPoints;
  double lowest = Double.POSITIVE_INFINITY;
  double highest = Double.NEGATIVE_INFINITY;
  double coldest = Double.POSITIVE_INFINITY;
  double hottest = Double.NEGATIVE_INFINITY;
  Instant first = Instant.MAX;
  Instant last = Instant.MIN;

  /** A stretch as far as it was seen. */
  static final class Seen {
    final Stretch stretch;
    Instant last;
    long lastLine;
    long rows;

    Seen(Stretch stretch) {
      this.stretch = stretch;
      this.last = stretch.first();
    }
  }

  ImportFindings(ImportPlan plan) {
    this.plan = plan;
  }

  int stretchCount() {
    return stretchCount;
  }

  @Override
  public void reading(Stretch stretch, TableRow.Reading row, Instant time) {
    note(stretch, row);
    readings++;
    double milliSiemens = row.unit().toMilliSiemensPerCm(row.conductivity());
    lowest = Math.min(lowest, milliSiemens);
    highest = Math.max(highest, milliSiemens);
    double celsius = plan.columns().temperatureUnit().toCelsius(row.temperature());
    if (!Double.isNaN(celsius)) {
      coldest = Math.min(coldest, celsius);
      hottest = Math.max(hottest, celsius);
    }
    first = time.isBefore(first) ? time : first;
    last = time.isAfter(last) ? time : last;
    understood =
        "%s  %s %s%s"
            .formatted(
                time.atZone(plan.zone()).toOffsetDateTime(),
                ImportReport.number(row.conductivity()),
                row.unit().symbol(),
                Double.isNaN(row.temperature())
                    ? ""
                    : "  "
                        + ImportReport.number(row.temperature())
                        + " "
                        + plan.columns().temperatureUnit().symbol());
  }

  @Override
  public void undated(Stretch stretch, TableRow.Reading row) {
    note(stretch, row);
    undated++;
    understood = "left out: the clock was never set (stretch %d)".formatted(stretch.number());
  }

  private void note(Stretch stretch, TableRow.Reading row) {
    stretchCount = stretch.number();
    @Nullable Seen seen = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
    if (seen == null || seen.stretch.number() != stretch.number()) {
      if (stretches.size() >= MOST_STRETCHES) {
        return;
      }
      seen = new Seen(stretch);
      stretches.add(seen);
    }
    seen.last = row.time();
    seen.lastLine = row.line();
    seen.rows++;
  }

  @Override
  public void broken(long line, TableRow.Broken row) {
    tally.add(row.kind(), line, row.shown());
    understood = "left out: " + row.kind();
  }

  @Override
  public void other(TableRow row) {
    understood = "";
    if (row instanceof TableRow.HeadingAgain) {
      headings++;
    } else if (row instanceof TableRow.OtherPoint) {
      otherPoints++;
    } else {
      empty++;
    }
  }

  @Override
  public void line(long line, String text) {
    lines = line;
    if (examples.size() < MOST_EXAMPLES && !understood.isEmpty()) {
      String shown = text.replaceAll("\\p{Cntrl}", " ");
      examples.add(
          "%5d  %s".formatted(line, shown.length() > 70 ? shown.substring(0, 70) + "…" : shown));
      examples.add("    →  " + understood);
    }
    understood = "";
  }
}
