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
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The measurement chain over a recorded table, row for row, holding back only as many rows as the
 * judge may still qualify.
 */
final class Examination {
  static final List<String> ADDED = List.of("conductivity25_mS_cm", "uncertainty_mS_cm", "flags");

  private static final PointName POINT = new PointName("recording");

  private final Basis basis;
  private final QualityJudge judge;
  private final Deque<Held> held = new ArrayDeque<>();
  private final ExaminationSummary summary = new ExaminationSummary();
  private long sequence;
  private double lastSeconds;
  private double lastInterval = 1;

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

  private static final class Held {
    private final String text;
    private final @Nullable Instant time;
    private final Measurement measurement;
    private Flags flags;

    Held(String text, @Nullable Instant time, Measurement measurement, Flags flags) {
      this.text = text;
      this.time = time;
      this.measurement = measurement;
      this.flags = flags;
    }

    long sequence() {
      return measurement.stamp().sequence();
    }
  }

  /** Reads all rows and writes them with what was found. */
  ExaminationSummary run(CsvRows rows, Writer out) throws IOException, UnfitException {
    for (String added : ADDED) {
      if (rows.has(added)) {
        throw new UnfitException(
            "line 1 has a column %s already; examine the original table".formatted(added));
      }
    }
    RecordedRow.Columns columns = RecordedRow.Columns.of(rows);
    out.write(rows.headerText() + "," + String.join(",", ADDED) + "\n");
    for (CsvRows.Row row = rows.next(); row != null; row = rows.next()) {
      take(row.text(), RecordedRow.of(row, columns));
      if (held.size() > QualityJudge.REACH) {
        write(held.removeFirst(), out);
      }
    }
    while (!held.isEmpty()) {
      write(held.removeFirst(), out);
    }
    return summary;
  }

  private void take(String text, RecordedRow row) {
    sequence++;
    double seconds = seconds(row.time());
    Stamp stamp =
        new Stamp(
            1, sequence, Math.round(seconds * 1e9), Math.round(seconds * 1e3), row.time() != null);
    Reading reading =
        new Reading(
            row.microSiemensPerCm(),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            row.celsius(),
            TemperatureUnit.CELSIUS);
    Measurement measurement =
        MeasurementChain.measure(
            new Indication(POINT, stamp, reading, Indication.Origin.PROBE), basis);
    Judgement said =
        judge.judge(
            new Observation(
                sequence,
                seconds,
                reading.conductivityMilliSiemensPerCm(),
                row.celsius(),
                row.neighbourCelsius(),
                measurement.flags()));
    held.add(new Held(text, row.time(), measurement, measurement.flags().with(said.now())));
    said.earlier().forEach(this::qualify);
    summary.time(row);
  }

  private void qualify(Judgement.Qualification one) {
    for (Held row : held) {
      if (row.sequence() == one.sequence()) {
        row.flags = row.flags.with(one.flags());
      }
    }
  }

  /** A row without a time is taken to follow the last at the usual interval. */
  private double seconds(@Nullable Instant time) {
    double seconds = time == null ? lastSeconds + lastInterval : time.toEpochMilli() / 1e3;
    if (time != null && sequence > 1 && seconds > lastSeconds) {
      lastInterval = seconds - lastSeconds;
    }
    lastSeconds = seconds;
    return seconds;
  }

  private void write(Held row, Writer out) throws IOException {
    summary.add(row.time, row.flags);
    out.write(row.text);
    out.write(',');
    out.write(number(row.measurement.conductivity25MilliSiemensPerCm()));
    out.write(',');
    out.write(number(row.measurement.standardUncertaintyMilliSiemensPerCm()));
    out.write(',');
    out.write(row.flags.list().stream().map(QualityFlag::code).collect(Collectors.joining("|")));
    out.write('\n');
  }

  private static String number(double number) {
    return Double.isFinite(number)
        ? new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros().toPlainString()
        : "";
  }
}
