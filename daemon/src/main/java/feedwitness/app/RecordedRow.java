package feedwitness.app;

import feedwitness.app.CsvRows.UnfitException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of one recorded row.
 *
 * @param time null if the row has none
 * @param zoned whether the time said its zone; if not, it was taken for UTC
 * @param microSiemensPerCm NaN if empty
 * @param celsius NaN if empty
 * @param neighbourCelsius NaN if empty or without such a column
 */
record RecordedRow(
    @Nullable Instant time,
    boolean zoned,
    double microSiemensPerCm,
    double celsius,
    double neighbourCelsius) {
  static final String TIME = "time";
  static final String CONDUCTIVITY = "conductivity_uS_cm";
  static final String TEMPERATURE = "temperature_C";
  static final String NEIGHBOUR = "neighbour_temperature_C";

  /** Where the columns are; {@code neighbour} is −1 if there is none. */
  record Columns(int time, int conductivity, int temperature, int neighbour) {
    static Columns of(CsvRows rows) throws UnfitException {
      return new Columns(
          rows.column(TIME),
          rows.column(CONDUCTIVITY),
          rows.column(TEMPERATURE),
          rows.has(NEIGHBOUR) ? rows.column(NEIGHBOUR) : -1);
    }
  }

  static RecordedRow of(CsvRows.Row row, Columns columns) throws UnfitException {
    String time = row.cells().get(columns.time()).strip();
    boolean zoned = time.isEmpty() || !isLocal(time);
    return new RecordedRow(
        time.isEmpty() ? null : instant(row, time, zoned),
        zoned,
        number(row, columns.conductivity(), CONDUCTIVITY),
        number(row, columns.temperature(), TEMPERATURE),
        columns.neighbour() < 0 ? Double.NaN : number(row, columns.neighbour(), NEIGHBOUR));
  }

  private static boolean isLocal(String time) {
    int clock = time.indexOf(':');
    return !time.endsWith("Z")
        && time.indexOf('+') < 0
        && (clock < 0 || time.indexOf('-', clock) < 0);
  }

  private static Instant instant(CsvRows.Row row, String time, boolean zoned)
      throws UnfitException {
    String iso = time.replace(' ', 'T');
    try {
      return zoned
          ? OffsetDateTime.parse(iso).toInstant()
          : LocalDateTime.parse(iso).toInstant(ZoneOffset.UTC);
    } catch (DateTimeException e) {
      throw new UnfitException(
          "line %d: time '%s' is no date and time; write it as 2026-06-02T14:05:00Z"
              .formatted(row.line(), time));
    }
  }

  private static double number(CsvRows.Row row, int column, String name) throws UnfitException {
    String text = row.cells().get(column).strip();
    if (text.isEmpty() || text.equalsIgnoreCase("nan")) {
      return Double.NaN;
    }
    double number;
    try {
      number = Double.parseDouble(text);
    } catch (NumberFormatException e) {
      number = Double.POSITIVE_INFINITY;
    }
    if (!Double.isFinite(number)) {
      throw new UnfitException(
          "line %d: %s '%s' is no number; write it with a decimal point, or leave the cell empty"
                  .formatted(row.line(), name, text)
              + " if nothing was read");
    }
    return number;
  }
}
