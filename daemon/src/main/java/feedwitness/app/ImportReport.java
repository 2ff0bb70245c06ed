package feedwitness.app;

import feedwitness.app.table.Columns;
import feedwitness.app.table.DateOrder;
import feedwitness.app.table.NumberStyle;
import feedwitness.engine.TypedReading.Compensated;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.OptionalInt;

/** Says what was understood of a table. */
final class ImportReport {
  private final ImportPlan plan;
  private final ImportFindings found;
  private final PrintWriter out;

  ImportReport(ImportPlan plan, ImportFindings found, PrintWriter out) {
    this.plan = plan;
    this.found = found;
    this.out = out;
  }

  static String number(double number) {
    return Double.isFinite(number)
        ? new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros().toPlainString()
        : "none";
  }

  void print() {
    Columns columns = plan.columns();
    out.printf("%s is read as follows.%n", plan.file().path());
    out.printf(
        "  Text          %s, fields separated by %s, %s%n",
        plan.file().charset().name(),
        switch (columns.separator()) {
          case '\t' -> "tab";
          case ';' -> "semicolon";
          default -> "comma";
        },
        columns.headingLine() == 0 ? "no heading" : "heading in line " + columns.headingLine());
    out.printf("  Time          column %s: %s%n", timeColumns(columns), plan.times());
    if (plan.needsZone()) {
      out.printf(
          "                in %s, %s%n",
          plan.zone(), plan.dates() == DateOrder.DAY_FIRST ? "day first" : "month first");
    }
    out.printf(
        "  Conductivity  column %s, in %s, %s%n",
        columns.name(columns.conductivity()),
        columns.unit().isPresent()
            ? "the unit of column " + columns.name(columns.unit().getAsInt())
            : columns.conductivityUnit().symbol(),
        plan.compensated() == Compensated.TO_25 ? "at 25 °C already" : "not referred to 25 °C yet");
    OptionalInt temperature = columns.temperature();
    out.printf(
        "  Temperature   %s%n",
        temperature.isPresent()
            ? "column %s, in %s"
                .formatted(columns.name(temperature.getAsInt()), columns.temperatureUnit().symbol())
            : "none");
    out.printf(
        "  Numbers       with a decimal %s%n",
        plan.numbers() == NumberStyle.COMMA ? "comma" : "point");
    counts();
    stretches();
    out.println("First rows, as they stand and as they are understood:");
    found.examples.forEach(out::println);
    found.tally.words().forEach(out::println);
    out.flush();
  }

  private static String timeColumns(Columns columns) {
    return columns.name(columns.time())
        + (columns.timeOfDay().isPresent()
            ? " with " + columns.name(columns.timeOfDay().getAsInt())
            : "");
  }

  private void counts() {
    out.printf("  Rows          %d readings for %s", found.readings, plan.point());
    part(found.undated, "without a date");
    part(found.tally.count(), "not understood");
    part(found.empty, "without a reading");
    part(found.headings, "repeated headings");
    part(found.otherPoints, "of other points");
    out.println();
    if (found.readings > 0) {
      out.printf("  Range         %s to %s%n", local(found.first), local(found.last));
      out.printf("                %s to %s mS/cm", number(found.lowest), number(found.highest));
      if (found.coldest <= found.hottest) {
        out.printf(", %s to %s °C", number(found.coldest), number(found.hottest));
      }
      out.println();
    }
  }

  private void part(long count, String what) {
    if (count > 0) {
      out.printf(", %d %s", count, what);
    }
  }

  private OffsetDateTime local(Instant time) {
    return time.atZone(plan.zone()).toOffsetDateTime();
  }

  private void stretches() {
    if (found.stretchCount() < 2 && found.undated == 0) {
      return;
    }
    out.println("Its clock was changed; the file falls into stretches, kept in their order:");
    for (ImportFindings.Seen seen : found.stretches) {
      out.printf(
          "  %d: lines %d to %d, %d readings, %s to %s on its clock%s%n",
          seen.stretch.number(),
          seen.stretch.firstLine(),
          seen.lastLine,
          seen.rows,
          local(seen.stretch.first()),
          local(seen.last),
          remark(seen));
    }
    if (found.stretchCount() > found.stretches.size()) {
      out.printf("  and %d more%n", found.stretchCount() - found.stretches.size());
    }
  }

  private String remark(ImportFindings.Seen seen) {
    Instant start = plan.assumedStarts().get(seen.stretch.number());
    if (start != null) {
      return "; taken to begin at " + local(start);
    }
    return seen.stretch.clockSet()
        ? ""
        : ": never set, left out; if you know when it began, say --assume-start %d=TIME"
            .formatted(seen.stretch.number());
  }
}
