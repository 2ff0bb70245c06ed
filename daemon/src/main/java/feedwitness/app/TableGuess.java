package feedwitness.app;

import feedwitness.app.table.Columns;
import feedwitness.app.table.Fields;
import feedwitness.app.table.Heading;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Finds out where in a table things stand, from what was said and from its first lines. What must
 * be asked is added to the questions; what makes the table unusable is thrown.
 */
final class TableGuess {
  private static final int HEAD = 100;

  private final ImportWishes wishes;
  private final List<String> questions;

  TableGuess(ImportWishes wishes, List<String> questions) {
    this.wishes = wishes;
    this.questions = questions;
  }

  /**
   * Looks at the beginning of the file.
   *
   * @throws IOException in words for people, if time or conductivity cannot be found
   */
  Columns columns(TableFile file, PointName target) throws IOException {
    List<String> head = file.head(HEAD);
    List<String> filled = head.stream().filter(line -> !line.isBlank()).toList();
    if (filled.isEmpty()) {
      throw new IOException("%s is empty".formatted(file.path()));
    }
    char separator =
        wishes.separator == null ? Fields.separator(filled) : wishes.separator.character;
    for (int i = 0; i < head.size(); i++) {
      Heading heading = new Heading(Fields.of(head.get(i), separator));
      if (timeColumn(heading).isPresent()
          && conductivityColumn(heading).isPresent()
          && isHeading(heading)) {
        return columns(heading, i + 1, separator, target);
      }
    }
    Heading none = new Heading(List.of());
    if (timeColumn(none).isPresent() && conductivityColumn(none).isPresent()) {
      return columns(none, 0, separator, target);
    }
    throw new IOException(
        "%s: no heading with a time and a conductivity in its first lines; name the columns with --time and --conductivity, by name or number. It begins with: %s"
            .formatted(file.path(), String.join(" | ", Fields.of(filled.get(0), separator))));
  }

  /** A row of numbers is no heading, even if columns were named by number. */
  private boolean isHeading(Heading heading) {
    int at = conductivityColumn(heading).orElse(0);
    return at < heading.names().size() && heading.names().get(at).matches(".*[A-Za-z].*");
  }

  private OptionalInt timeColumn(Heading heading) {
    return wishes.time == null ? heading.time() : heading.column(wishes.time.split("\\+", 2)[0]);
  }

  private OptionalInt timeOfDayColumn(Heading heading) {
    if (wishes.time == null) {
      return heading.timeOfDay();
    }
    String[] two = wishes.time.split("\\+", 2);
    return two.length == 2 ? heading.column(two[1]) : OptionalInt.empty();
  }

  private OptionalInt conductivityColumn(Heading heading) {
    return wishes.conductivity == null
        ? heading.conductivity()
        : heading.column(wishes.conductivity);
  }

  private OptionalInt temperatureColumn(Heading heading) throws IOException {
    if (wishes.temperature == null) {
      return heading.temperature();
    }
    if (wishes.temperature.equals("none")) {
      return OptionalInt.empty();
    }
    OptionalInt named = heading.column(wishes.temperature);
    if (named.isEmpty()) {
      throw new IOException(
          "there is no column '%s'; there are: %s"
              .formatted(wishes.temperature, String.join(", ", heading.names())));
    }
    return named;
  }

  private Columns columns(Heading heading, long line, char separator, PointName target)
      throws IOException {
    int conductivity = conductivityColumn(heading).orElseThrow();
    OptionalInt temperature = temperatureColumn(heading);
    OptionalInt unitColumn = wishes.unit == null ? heading.unitColumn() : OptionalInt.empty();
    return new Columns(
        separator,
        heading.names(),
        line,
        timeColumn(heading).orElseThrow(),
        timeOfDayColumn(heading),
        conductivity,
        unit(name(heading, conductivity), unitColumn.isPresent()),
        unitColumn,
        temperature,
        temperature.isPresent()
            ? temperatureUnit(name(heading, temperature.getAsInt()))
            : TemperatureUnit.CELSIUS,
        heading.pointColumn(),
        Optional.of(wishes.fromPoint == null ? target : new PointName(wishes.fromPoint)));
  }

  private ConductivityUnit unit(String name, boolean inEachRow) throws IOException {
    if (wishes.unit != null) {
      return ConductivityUnit.parse(wishes.unit)
          .orElseThrow(
              () ->
                  new IOException(
                      "--unit '%s' is no unit of conductivity; give uS/cm, mS/cm, dS/m, mS/m, S/m or CF (ppm hides a factor of 500, 640 or 700)"
                          .formatted(wishes.unit)));
    }
    Optional<ConductivityUnit> said = Heading.conductivityUnit(name);
    if (said.isEmpty() && !inEachRow) {
      questions.add(
          "Which unit has column '%s'? Say --unit uS/cm, --unit mS/cm or another.".formatted(name));
    }
    return said.orElse(ConductivityUnit.MILLISIEMENS_PER_CM);
  }

  private TemperatureUnit temperatureUnit(String name) throws IOException {
    if (wishes.temperatureUnit != null) {
      return TemperatureUnit.parse(wishes.temperatureUnit)
          .orElseThrow(
              () ->
                  new IOException(
                      "--temperature-unit '%s' is neither C nor F"
                          .formatted(wishes.temperatureUnit)));
    }
    Optional<TemperatureUnit> said = Heading.temperatureUnit(name);
    if (said.isEmpty()) {
      questions.add(
          "Which unit has column '%s'? Say --temperature-unit C or --temperature-unit F."
              .formatted(name));
    }
    return said.orElse(TemperatureUnit.CELSIUS);
  }

  private static String name(Heading heading, int column) {
    return column < heading.names().size()
        ? heading.names().get(column)
        : Integer.toString(column + 1);
  }
}
