package feedwitness.app;

import feedwitness.app.CsvRows.UnfitException;
import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quality.Flags;
import feedwitness.quality.JudgeSettings;
import feedwitness.quality.Judgement;
import feedwitness.quality.Observation;
import feedwitness.quality.QualityFlag;
import feedwitness.quality.QualityJudge;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The measurement chain over a recorded table, row for row. The table is read twice: what is said
 * of a row may come as late as the last, so first every row is judged and only its flags are kept,
 * eight octets each, and then the rows are written with them.
 */
final class Examination {
  static final List<String> ADDED = List.of("conductivity25_mS_cm", "uncertainty_mS_cm", "flags");

  private static final PointName POINT = new PointName("recording");

  private final Basis basis;
  private final QualityJudge judge;
  private final ExaminationSummary summary = new ExaminationSummary();
  private long[] flags = new long[1024];
  private int rows;
  private double lastSeconds;
  private double lastInterval = 1;

  /** Opens the table from its beginning. */
  interface Table {
    BufferedReader open() throws IOException;
  }

  Examination(
      boolean at25,
      TemperatureCompensation compensation,
      InstrumentLimits limits,
      boolean dryIsNormal) {
    basis =
        new Basis(
            Basis.RULES, POINT.text(), at25, new CalibrationCurve.Identity(), compensation, limits);
    judge =
        new QualityJudge(
            new JudgeSettings(limits.resolutionMilliSiemensPerCm(), at25, dryIsNormal));
  }

  /** Reads all rows and writes them with what was found. */
  ExaminationSummary run(Table table, Writer out) throws IOException, UnfitException {
    try (BufferedReader in = table.open()) {
      judgeAll(new CsvRows(in));
    }
    try (BufferedReader in = table.open()) {
      writeAll(new CsvRows(in), out);
    }
    return summary;
  }

  private void judgeAll(CsvRows table) throws IOException, UnfitException {
    for (String added : ADDED) {
      if (table.has(added)) {
        throw new UnfitException(
            "line 1 has a column %s already; examine the original table".formatted(added));
      }
    }
    RecordedRow.Columns columns = RecordedRow.Columns.of(table);
    for (CsvRows.Row row = table.next(); row != null; row = table.next()) {
      judge(RecordedRow.of(row, columns));
    }
  }

  private void judge(RecordedRow row) {
    double seconds = seconds(row.time());
    Measurement measurement = measure(row, seconds);
    Judgement said =
        judge.judge(
            new Observation(
                rows,
                seconds,
                ConductivityUnit.MICROSIEMENS_PER_CM.toMilliSiemensPerCm(row.microSiemensPerCm()),
                row.celsius(),
                row.neighbourCelsius(),
                measurement.flags()));
    if (rows == flags.length) {
      flags = Arrays.copyOf(flags, 2 * rows);
    }
    flags[rows] = measurement.flags().with(said.now()).bits();
    said.earlier().forEach(this::qualify);
    summary.time(row);
    rows++;
  }

  private Measurement measure(RecordedRow row, double seconds) {
    Stamp stamp =
        new Stamp(
            1, rows, Math.round(seconds * 1e9), Math.round(seconds * 1e3), row.time() != null);
    Reading reading =
        new Reading(
            row.microSiemensPerCm(),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            row.celsius(),
            TemperatureUnit.CELSIUS);
    return MeasurementChain.measure(
        new Indication(POINT, stamp, reading, Indication.Origin.PROBE), basis);
  }

  private void qualify(Judgement.Earlier one) {
    for (int at = (int) one.first(); at <= one.last(); at++) {
      Flags before = new Flags(flags[at]);
      Flags after = before.withLater(one.flags());
      if (!after.equals(before)) {
        flags[at] = after.bits();
        summary.qualified(rows - at);
      }
    }
  }

  /** A row without a time is taken to follow the last at the usual interval. */
  private double seconds(@Nullable Instant time) {
    double seconds = time == null ? lastSeconds + lastInterval : time.toEpochMilli() / 1e3;
    if (time != null && rows > 0 && seconds > lastSeconds) {
      lastInterval = seconds - lastSeconds;
    }
    lastSeconds = seconds;
    return seconds;
  }

  /** No more than was judged, should the table grow meanwhile. */
  private void writeAll(CsvRows table, Writer out) throws IOException, UnfitException {
    RecordedRow.Columns columns = RecordedRow.Columns.of(table);
    out.write(table.headerText() + "," + String.join(",", ADDED) + "\n");
    for (int at = 0; at < rows; at++) {
      CsvRows.Row row = table.next();
      if (row == null) {
        throw new IOException("the table was cut while it was examined; examine it again");
      }
      write(row.text(), RecordedRow.of(row, columns), new Flags(flags[at]), out);
    }
  }

  private void write(String text, RecordedRow row, Flags found, Writer out) throws IOException {
    summary.add(row.time(), found);
    Measurement measurement = measure(row, 0);
    out.write(text);
    out.write(',');
    out.write(number(measurement.conductivity25MilliSiemensPerCm()));
    out.write(',');
    out.write(number(measurement.standardUncertaintyMilliSiemensPerCm()));
    out.write(',');
    out.write(found.list().stream().map(QualityFlag::code).collect(Collectors.joining("|")));
    out.write('\n');
  }

  private static String number(double number) {
    return Double.isFinite(number)
        ? new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros().toPlainString()
        : "";
  }
}
