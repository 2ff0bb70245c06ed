package feedwitness.publish;

import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.PointName;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Writes what was kept as CSV, a row a sample, readings and missing ones, in (boot, sequence) order
 * of each point, in constant memory. Conductivities are mS/cm but for {@code indicated}, which is
 * what the instrument said, digit for digit, in {@code indicated_unit}. The uncertainty is twice
 * the standard uncertainty. A sample taken before the clock could be trusted has no time; {@code
 * undated_s} then counts seconds on the clock of its start (the part of {@code id} before the
 * dash).
 */
public final class CsvExport {
  /** Names of the columns; {@code import} knows them again. */
  public static final List<String> COLUMNS =
      List.of(
          "time",
          "point",
          "conductivity25_mS_cm",
          "uncertainty_mS_cm",
          "indicated",
          "indicated_unit",
          "temperature_C",
          "flags",
          "origin",
          "missing",
          "id",
          "undated_s");

  private final CsvLayout layout;
  private final Appendable out;
  private final DateTimeFormatter times;
  private long rows;

  public CsvExport(CsvLayout layout, Appendable out) {
    this.layout = layout;
    this.out = out;
    this.times =
        DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSXXX").withZone(layout.zone());
  }

  /**
   * Writes the header and every sample of the points with {@code from} ≤ time < {@code to}.
   *
   * @throws IOException if {@code out} fails
   */
  public void write(History history, List<PointName> points, Instant from, Instant to)
      throws IOException {
    line(COLUMNS);
    try {
      for (PointName point : points) {
        history.scan(point, from, to, this::row);
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /** Rows written so far, without the header. */
  public long rows() {
    return rows;
  }

  private void row(Measurement m) {
    @Nullable Indication indication = m.sample() instanceof Indication i ? i : null;
    @Nullable Reading reading = indication == null ? null : indication.reading();
    boolean dated = m.stamp().dated();
    try {
      line(
          List.of(
              dated ? times.format(m.stamp().wall()) : "",
              m.point().text(),
              number(Numbers.conductivity(m.conductivity25MilliSiemensPerCm())),
              number(Numbers.conductivity(2 * m.standardUncertaintyMilliSiemensPerCm())),
              reading == null ? "" : exact(reading.conductivity()),
              reading == null ? "" : reading.conductivityUnit().symbol(),
              number(Numbers.temperature(m.temperatureCelsius())),
              m.flags().list().stream().map(QualityFlag::code).collect(Collectors.joining(" ")),
              indication == null ? "" : Codes.of(indication.origin()),
              m.sample() instanceof Missing missing ? Codes.of(missing.cause()) : "",
              m.stamp().id(),
              dated ? "" : exact(Math.floorDiv(m.stamp().monotonicNanos(), 1_000_000L) / 1e3)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    rows++;
  }

  private String exact(double number) {
    return Double.isFinite(number) ? number(new BigDecimal(Double.toString(number))) : "";
  }

  private String number(@Nullable BigDecimal number) {
    if (number == null) {
      return "";
    }
    String plain = number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    return layout.decimalComma() ? plain.replace('.', ',') : plain;
  }

  /** No field of ours holds a separator, a quotation mark or a line end. */
  private void line(List<String> fields) throws IOException {
    for (int i = 0; i < fields.size(); i++) {
      if (i > 0) {
        out.append(layout.separator());
      }
      out.append(fields.get(i));
    }
    out.append("\r\n");
  }
}
