package feedwitness.feed;

import feedwitness.quantity.ConductivityUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Amounts as people write them, a number and a unit. Each reader throws IllegalArgumentException
 * saying {@code reason; remedy}.
 */
final class Amounts {
  private static final Pattern SHAPE =
      Pattern.compile("(-?[0-9]{1,9}(?:\\.[0-9]{1,9})?|-?\\.[0-9]{1,9})\\s*(.*)");

  /** Litres in each unit. Gallons and pints differ by a fifth between countries. */
  private static final Map<String, Double> LITRES =
      Map.ofEntries(
          Map.entry("", 1.0),
          Map.entry("l", 1.0),
          Map.entry("litre", 1.0),
          Map.entry("litres", 1.0),
          Map.entry("liter", 1.0),
          Map.entry("liters", 1.0),
          Map.entry("ml", 1e-3),
          Map.entry("m3", 1000.0),
          Map.entry("m³", 1000.0),
          Map.entry("us gal", 3.785411784),
          Map.entry("imp gal", 4.54609),
          Map.entry("us qt", 0.946352946),
          Map.entry("us fl oz", 0.0295735296),
          Map.entry("imp fl oz", 0.0284130625));

  private static final Map<String, Double> GRAMS =
      Map.of("", 1.0, "g", 1.0, "kg", 1000.0, "mg", 1e-3, "oz", 28.349523, "lb", 453.59237);

  private static final double STRONGEST_FEED = 20;

  private Amounts() {}

  /** Number and unit as written. */
  record Written(double number, String unit) {}

  static Written written(String text) {
    String plain = text.strip();
    if (plain.matches("-?[0-9]+,[0-9]+\\b.*")) {
      throw new IllegalArgumentException(
          "has a decimal comma; write " + plain.replaceFirst(",", "."));
    }
    Matcher shape = SHAPE.matcher(plain);
    if (!shape.matches()) {
      throw new IllegalArgumentException(
          "does not begin with a number; write digits, with a decimal point, then the unit");
    }
    return new Written(Double.parseDouble(shape.group(1)), shape.group(2).strip());
  }

  /** A number without unit. */
  static double number(String text) {
    Written written = written(text);
    if (!written.unit().isEmpty()) {
      throw new IllegalArgumentException(
          "has the unit '%s' where none belongs; write the number alone".formatted(written.unit()));
    }
    return written.number();
  }

  static double litres(String text) {
    String unit = unit(text);
    if (List.of("gal", "gallon", "gallons", "qt", "fl oz", "pt", "pint").contains(unit)) {
      throw new IllegalArgumentException(
          "US or imperial? they differ by a fifth; write US %s, imp %s, or litres"
              .formatted(unit, unit));
    }
    return of(text, LITRES, "L, mL, m3, US gal, imp gal");
  }

  static double grams(String text) {
    return of(text, GRAMS, "g, kg, mg, oz, lb");
  }

  private static String unit(String text) {
    return written(text).unit().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }

  private static double of(String text, Map<String, Double> units, String known) {
    Written written = written(text);
    Double factor = units.get(unit(text));
    if (factor == null) {
      throw new IllegalArgumentException(
          "has the unit '%s', which is not known here; write one of %s"
              .formatted(written.unit(), known));
    }
    return written.number() * factor;
  }

  static double celsius(String text) {
    Written written = written(text);
    return switch (written.unit()) {
      case "", "C", "°C" -> written.number();
      case "F", "°F" -> (written.number() - 32) / 1.8;
      default ->
          throw new IllegalArgumentException(
              "has no unit of temperature; write °C or °F after the number");
    };
  }

  /** Percent, with or without its sign. */
  static double percent(String text) {
    Written written = written(text);
    if (!written.unit().isEmpty() && !written.unit().equals("%")) {
      throw new IllegalArgumentException("is no percentage; write for example 98 %");
    }
    return written.number();
  }

  /** Grams in a litre: {@code 1.2 g/L}, {@code 0.1 oz/US gal}. */
  static double gramsPerLitre(String text) {
    Written written = written(text);
    String[] parts = written.unit().split("/", 2);
    if (written.unit().isEmpty()) {
      return written.number();
    }
    if (parts.length != 2) {
      throw new IllegalArgumentException("is no rate; write for example 1.2 g/L");
    }
    return grams(written.number() + " " + parts[0].strip()) / litres("1 " + parts[1].strip());
  }

  /** g/mL, which is kg/L. */
  static double density(String text) {
    Written written = written(text);
    return switch (written.unit().toLowerCase(Locale.ROOT)) {
      case "", "g/ml", "kg/l", "g/cm3" -> written.number();
      case "g/l", "kg/m3" -> written.number() / 1000;
      default ->
          throw new IllegalArgumentException("has no unit of density; write for example 1.24 g/mL");
    };
  }

  /** A nutrient as element, mg/L. */
  static double milligramsPerLitre(String text) {
    Written written = written(text);
    return switch (written.unit().toLowerCase(Locale.ROOT)) {
      case "", "mg/l", "ppm", "g/m3" -> written.number();
      case "g/l" -> written.number() * 1000;
      default ->
          throw new IllegalArgumentException(
              "is no concentration of an element; write for example 150 mg/L");
    };
  }

  /** mS/cm at 25 °C of a feed or a water: a number alone is mS/cm. */
  static double strength(String text) {
    Written written = written(text);
    String unit = written.unit().replaceFirst("(?i)\\s+at 25 °?C$", "");
    double value = conductivity(written.number(), unit);
    if (value < 0) {
      throw new IllegalArgumentException("is negative; a strength is 0 or more");
    }
    if (value > STRONGEST_FEED) {
      boolean slip = unit.isEmpty() || unit.equals("mS/cm") || unit.equals("dS/m");
      throw new IllegalArgumentException(
          slip
              ? "is beyond any feed in mS/cm: µS/cm?; write %s µS/cm, which is %s mS/cm"
                  .formatted(Text.plain(written.number()), Text.plain(written.number() / 1000))
              : "is more than %s mS/cm, beyond any feed; check number and unit"
                  .formatted(Text.plain(STRONGEST_FEED)));
    }
    return value;
  }

  private static double conductivity(double number, String unit) {
    if (unit.isEmpty()) {
      return number;
    }
    Matcher salts = SaltsUnit.SHAPE.matcher(unit);
    if (salts.matches()) {
      String factor = salts.group(1);
      if (factor == null) {
        throw new IllegalArgumentException(
            "nutrient or salts, at which factor?; a strength in ppm needs its factor, such as"
                + " 750 ppm 500 (or 640, 700), or write it in mS/cm; mg/L of a nutrient goes under"
                + " nutrients");
      }
      return number / Double.parseDouble(factor);
    }
    return ConductivityUnit.parse(unit)
        .map(known -> known.toMilliSiemensPerCm(number))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "has no unit of conductivity; write one of "
                        + Arrays.stream(ConductivityUnit.values())
                            .map(ConductivityUnit::symbol)
                            .collect(Collectors.joining(", "))));
  }
}
