package feedwitness.app.table;

import feedwitness.quantity.ConductivityUnit;
import java.util.List;
import java.util.Optional;

/** Understands the lines below the heading, one after another. */
public final class RowReader {
  /** No feed or stock conducts better, mS/cm. */
  private static final double MOST_MILLISIEMENS_PER_CM = 300;

  private static final double COLDEST_CELSIUS = -40;
  private static final double HOTTEST_CELSIUS = 100;

  private final Columns columns;
  private final NumberStyle numbers;
  private final TimeReader times;

  public RowReader(Columns columns, NumberStyle numbers, TimeReader times) {
    this.columns = columns;
    this.numbers = numbers;
    this.times = times;
  }

  /** Understands a line. */
  public TableRow read(long line, String text) {
    if (text.isBlank()) {
      return new TableRow.Empty();
    }
    List<String> fields = Fields.of(text, columns.separator());
    if (fields.equals(columns.heading())) {
      return new TableRow.HeadingAgain();
    }
    if (fields.size() < columns.fewest()) {
      return new TableRow.Broken("too few fields", text);
    }
    if (!columns.heading().isEmpty() && fields.size() > columns.heading().size()) {
      return new TableRow.Broken(
          "more fields than the heading (is the decimal comma also the separator?)", text);
    }
    if (columns.point().isPresent() && columns.wanted().isPresent()) {
      String point = fields.get(columns.point().getAsInt());
      if (!point.equals(columns.wanted().get().text())) {
        return new TableRow.OtherPoint();
      }
    }
    return reading(line, fields);
  }

  private TableRow reading(long line, List<String> fields) {
    String conductivityText = fields.get(columns.conductivity());
    if (NumberStyle.isEmpty(conductivityText)) {
      return new TableRow.Empty();
    }
    String timeText = columns.timeText(fields);
    TimeReader.Read time = times.read(timeText);
    if (time.time().isEmpty()) {
      return new TableRow.Broken("time: " + time.why(), timeText);
    }
    double conductivity = numbers.parse(conductivityText);
    if (Double.isNaN(conductivity)) {
      return new TableRow.Broken("conductivity: no number", conductivityText);
    }
    Optional<ConductivityUnit> unit = unit(fields);
    if (unit.isEmpty()) {
      return new TableRow.Broken("conductivity: its unit is not known", conductivityText);
    }
    if (conductivity < 0) {
      return new TableRow.Broken("conductivity: negative", conductivityText);
    }
    if (unit.get().toMilliSiemensPerCm(conductivity) > MOST_MILLISIEMENS_PER_CM) {
      return new TableRow.Broken(
          "conductivity: above 300 mS/cm, more than any feed or stock (check the unit)",
          conductivityText + " " + unit.get().symbol());
    }
    double temperature = Double.NaN;
    if (columns.temperature().isPresent()) {
      String text = fields.get(columns.temperature().getAsInt());
      temperature = numbers.parse(text);
      if (Double.isNaN(temperature) && !NumberStyle.isEmpty(text)) {
        return new TableRow.Broken("temperature: no number", text);
      }
      double celsius = columns.temperatureUnit().toCelsius(temperature);
      if (celsius < COLDEST_CELSIUS || celsius > HOTTEST_CELSIUS) {
        return new TableRow.Broken("temperature: outside -40 to 100 °C (check the unit)", text);
      }
    }
    return new TableRow.Reading(line, time.time().get(), conductivity, unit.get(), temperature);
  }

  private Optional<ConductivityUnit> unit(List<String> fields) {
    return columns.unit().isPresent() && columns.unit().getAsInt() < fields.size()
        ? ConductivityUnit.parse(fields.get(columns.unit().getAsInt()))
        : Optional.of(columns.conductivityUnit());
  }
}
