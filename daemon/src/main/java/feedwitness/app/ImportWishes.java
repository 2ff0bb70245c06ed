package feedwitness.app;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What the grower says about a table; what is not said is guessed, shown, or asked. */
@SuppressWarnings("NullAway.Init") // picocli fills the fields
final class ImportWishes {
  enum Separator {
    COMMA(','),
    SEMICOLON(';'),
    TAB('\t');

    final char character;

    Separator(char character) {
      this.character = character;
    }
  }

  enum Decimal {
    POINT,
    COMMA
  }

  enum Dates {
    DAY_FIRST,
    MONTH_FIRST
  }

  enum YesNo {
    YES,
    NO
  }

  @Option(
      names = "--time",
      paramLabel = "COLUMN",
      description =
          "Column of the time, by name or number from 1. Two columns: Date+Time. Default: guessed.")
  @Nullable String time;

  @Option(
      names = "--conductivity",
      paramLabel = "COLUMN",
      description = "Column of the conductivity. Default: guessed.")
  @Nullable String conductivity;

  @Option(
      names = "--temperature",
      paramLabel = "COLUMN",
      description = "Column of the temperature, or none. Default: guessed.")
  @Nullable String temperature;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      description =
          "Unit of the conductivity, such as uS/cm or mS/cm. Default: as its heading says.")
  @Nullable String unit;

  @Option(
      names = "--temperature-unit",
      paramLabel = "UNIT",
      description = "C or F. Default: as its heading says.")
  @Nullable String temperatureUnit;

  @Option(
      names = "--compensated",
      paramLabel = "YES|NO",
      description =
          "Whether the instrument had already referred the conductivity to 25 °C. Compensating"
              + " twice is the classic mistake: it is asked unless the heading says 25.")
  @Nullable YesNo compensated;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Time zone of local times, such as Europe/London. Default: the nursery's.")
  @Nullable String zone;

  @Option(
      names = "--dates",
      paramLabel = "ORDER",
      description = "day-first or month-first. Default: found out, or asked if it cannot be told.")
  @Nullable String dates;

  @Option(
      names = "--separator",
      paramLabel = "WHICH",
      description = "comma, semicolon or tab. Default: found out.")
  @Nullable Separator separator;

  @Option(
      names = "--decimal",
      paramLabel = "WHICH",
      description = "point or comma, in numbers. Default: found out, or asked.")
  @Nullable Decimal decimal;

  @Option(
      names = "--from-point",
      paramLabel = "NAME",
      description = "Which rows of a table with a column 'point'. Default: the name of --point.")
  @Nullable String fromPoint;

  @Option(
      names = "--not-before",
      paramLabel = "DATE",
      defaultValue = "2010-01-01",
      description = "A clock that shows an earlier date was never set. Default: ${DEFAULT-VALUE}.")
  String notBefore;

  @Option(
      names = "--assume-start",
      paramLabel = "STRETCH=TIME",
      description =
          "When a stretch without a right clock began, such as 2=2026-06-01T08:00; may be given"
              + " several times. Without it such a stretch is left out.")
  Map<Integer, String> assumedStarts = new LinkedHashMap<>();

  @Option(names = "--allow-future", description = "Take times that lie in the future too.")
  boolean allowFuture;
}
