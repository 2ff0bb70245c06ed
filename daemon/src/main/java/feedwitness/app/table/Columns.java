package feedwitness.app.table;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where in a row things stand, and in which unit.
 *
 * @param heading as it stands in the file; empty if the file has none
 * @param headingLine from 1; 0 if the file has none
 * @param time of the time, or of the date if {@code timeOfDay} is another
 * @param point column of the point and whose rows are wanted
 */
public record Columns(
    char separator,
    List<String> heading,
    long headingLine,
    int time,
    OptionalInt timeOfDay,
    int conductivity,
    ConductivityUnit conductivityUnit,
    OptionalInt unit,
    OptionalInt temperature,
    TemperatureUnit temperatureUnit,
    OptionalInt point,
    Optional<PointName> wanted) {
  public Columns {
    heading = List.copyOf(heading);
  }

  /** How many fields a row must have at least. */
  int fewest() {
    int last = Math.max(time, conductivity);
    last = Math.max(last, timeOfDay.orElse(0));
    return Math.max(last, temperature.orElse(0)) + 1;
  }

  /** The time of a row as one text. */
  public String timeText(List<String> fields) {
    String date = fields.get(time);
    return timeOfDay.isPresent() ? date + " " + fields.get(timeOfDay.getAsInt()) : date;
  }

  /** The name of a column, for people. */
  public String name(int column) {
    return column < heading.size() ? "'" + heading.get(column) + "'" : "number " + (column + 1);
  }
}
