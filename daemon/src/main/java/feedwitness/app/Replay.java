package feedwitness.app;

import feedwitness.app.CsvRows.UnfitException;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.publish.FindingsCsv;
import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.DriftWatch;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A recorded table through the drift watch, row by row; memory does not grow with its length. */
final class Replay {
  private static final double MICRO_TO_MILLI = 1e-3;
  private static final double LOWEST_CELSIUS = -5;
  private static final double HIGHEST_CELSIUS = 60;

  private final boolean at25;
  private final boolean all;
  private final PrintWriter out;
  private final TemperatureCompensation compensation =
      new TemperatureCompensation.Linear(
          CompensationChoice.Linear.FEED_PERCENT_PER_KELVIN / 100, 0.0006);
  private final DriftWatch watch = new DriftWatch(FeedLine.ofPoint(new PointName("recording")));
  private long rows;
  private long judged;
  private long told;
  private long lastMillis;
  private long lastInterval = 1000;
  private @Nullable Instant first;

  Replay(boolean at25, boolean all, PrintWriter out) {
    this.at25 = at25;
    this.all = all;
    this.out = out;
  }

  /** Reads all rows and prints what is found. */
  void run(BufferedReader in) throws IOException, UnfitException {
    CsvRows table = new CsvRows(in);
    RecordedRow.Columns columns = RecordedRow.Columns.of(table);
    out.print(FindingsCsv.HEADER + "\n");
    PlainRow plain = new PlainRow(table.headerText());
    for (String text = table.nextLine(); text != null; text = table.nextLine()) {
      if (plain.read(text)) {
        take(plain.epochMillis(), plain.microSiemensPerCm(), plain.celsius());
      } else {
        RecordedRow row = RecordedRow.of(table.row(text), columns);
        Instant time = row.time();
        take(
            time == null ? lastMillis + lastInterval : time.toEpochMilli(),
            row.microSiemensPerCm(),
            row.celsius());
      }
    }
  }

  private void take(long millis, double microSiemensPerCm, double celsius) {
    rows++;
    if (first == null) {
      first = Instant.ofEpochMilli(millis);
    } else if (millis > lastMillis) {
      lastInterval = millis - lastMillis;
    }
    lastMillis = millis;
    double value = at25(microSiemensPerCm * MICRO_TO_MILLI, celsius);
    if (value >= 0) {
      judged++;
      watch.line(1, millis * 1_000_000, millis, value, Double.NaN, celsius).forEach(this::print);
    }
  }

  /** NaN where it cannot be referred to 25 °C, or where both are zero: a dead bus, no reading. */
  private double at25(double value, double celsius) {
    if (!(value > 0) && !(Math.abs(celsius) > 0)) {
      return Double.NaN;
    }
    if (at25) {
      return value;
    }
    if (!(celsius > LOWEST_CELSIUS && celsius < HIGHEST_CELSIUS)) {
      return Double.NaN;
    }
    return compensation.at(celsius) instanceof TemperatureCompensation.Outcome.Factor factor
        ? value * factor.value()
        : Double.NaN;
  }

  private void print(DriftFinding finding) {
    if (FindingsCsv.isTold(finding)) {
      told++;
    } else if (!all) {
      return;
    }
    out.print(FindingsCsv.line(finding) + "\n");
  }

  /** What was done, in one line. */
  String summary() {
    return first == null
        ? "No rows: the table holds a header only."
        : "%d rows from %s to %s, %d of them judged; %d findings."
            .formatted(rows, first, Instant.ofEpochMilli(lastMillis), judged, told);
  }
}
