package feedwitness.app.table;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** Guesses from the names of columns what they hold. */
public record Heading(List<String> names) {
  private static final Pattern CONDUCTIVITY =
      Pattern.compile(
          "(sp)?(ec|cond|kappa|cf|indicated|leitf|conduct|lf)([^a-z].*|uctiv.*|ahig.*)?");
  private static final Pattern TEMPERATURE = Pattern.compile("(w|water)?[ _]?t(emp.*|[^a-z].*)?");
  private static final Pattern SALTS = Pattern.compile(".*(ppm|tds|mg/?l).*");

  public Heading {
    names = List.copyOf(names);
  }

  /** Whether a line of a table is a heading we can use. */
  public boolean isUseful() {
    return time().isPresent() && conductivity().isPresent();
  }

  /** A column by its name, any case, or by its number from 1. */
  public OptionalInt column(String nameOrNumber) {
    OptionalInt named = first(name -> name.equalsIgnoreCase(nameOrNumber.strip()));
    if (named.isEmpty() && nameOrNumber.strip().matches("\\d{1,3}")) {
      int number = Integer.parseInt(nameOrNumber.strip());
      return number >= 1 && number <= Math.max(names.size(), Fields.MOST)
          ? OptionalInt.of(number - 1)
          : OptionalInt.empty();
    }
    return named;
  }

  /** Column of the time, or of the date if the time of day stands in another. */
  public OptionalInt time() {
    OptionalInt date = first(name -> plain(name).matches("date|datum|day"));
    return date.isPresent() && timeOfDay().isPresent()
        ? date
        : first(name -> plain(name).matches(".*(time|date|datum|zeit|epoch|utc|unix).*"));
  }

  /** Column of the time of day, where the date has one of its own. */
  public OptionalInt timeOfDay() {
    boolean date = first(name -> plain(name).matches("date|datum|day")).isPresent();
    return date
        ? first(name -> plain(name).matches("time|zeit|hour|time[^a-z].*|clock"))
        : OptionalInt.empty();
  }

  /** The column of the conductivity as indicated rather than one that was worked out. */
  public OptionalInt conductivity() {
    OptionalInt own = first(name -> name.equals("indicated"));
    return own.isPresent()
        ? own
        : first(
            name ->
                CONDUCTIVITY.matcher(plain(name)).matches()
                    && !SALTS.matcher(plain(name)).matches());
  }

  /** Column of the temperature. */
  public OptionalInt temperature() {
    return first(
        name -> TEMPERATURE.matcher(plain(name)).matches() && !plain(name).startsWith("time"));
  }

  /** Column of the unit of each row, as our own export has it. */
  public OptionalInt unitColumn() {
    return first(name -> plain(name).matches("indicated_unit|unit|conductivity_unit"));
  }

  /** Column of the point of each row, as our own export has it. */
  public OptionalInt pointColumn() {
    return first(name -> plain(name).equals("point"));
  }

  /** Unit that the name of a column states: {@code Cond_uScm-1}, {@code EC (mS/cm)}. */
  public static Optional<ConductivityUnit> conductivityUnit(String name) {
    String letters = name.replace('µ', 'u').replace('μ', 'u').replaceAll("[^A-Za-z]", "");
    String lower = letters.toLowerCase(Locale.ROOT);
    if (lower.contains("uscm") || lower.contains("microscm")) {
      return Optional.of(ConductivityUnit.MICROSIEMENS_PER_CM);
    }
    if (lower.contains("mscm")) {
      return Optional.of(ConductivityUnit.MILLISIEMENS_PER_CM);
    }
    if (lower.contains("dsm")) {
      return Optional.of(ConductivityUnit.DECISIEMENS_PER_M);
    }
    if (letters.contains("mSm")) {
      return Optional.of(ConductivityUnit.MILLISIEMENS_PER_M);
    }
    if (name.contains("S/m")) {
      return Optional.of(ConductivityUnit.SIEMENS_PER_M);
    }
    return plain(name).matches("cf|cf[^a-z].*|.*[^a-z]cf")
        ? Optional.of(ConductivityUnit.CF)
        : Optional.empty();
  }

  /** Unit that the name of a column states: {@code Temp_C}, {@code Temperature (°F)}. */
  public static Optional<TemperatureUnit> temperatureUnit(String name) {
    String plain = plain(name);
    if (plain.matches(".*([^a-z]|deg)c([^a-z].*)?|.*celsius.*|tempc")) {
      return Optional.of(TemperatureUnit.CELSIUS);
    }
    return plain.matches(".*([^a-z]|deg)f([^a-z].*)?|.*fahrenheit.*|tempf")
        ? Optional.of(TemperatureUnit.FAHRENHEIT)
        : Optional.empty();
  }

  /** Whether the name says that the value is at 25 °C already. */
  public static boolean saysAt25(String name) {
    return plain(name).matches(".*25.*|.*specific.*|sp(ec)?[ _]?cond.*|spc.*");
  }

  private OptionalInt first(Predicate<String> wanted) {
    for (int i = 0; i < names.size(); i++) {
      if (wanted.test(names.get(i))) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }
}
