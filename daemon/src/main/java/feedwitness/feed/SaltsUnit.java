package feedwitness.feed;

import feedwitness.quantity.ConductivityUnit;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The unit a meter shows: of conductivity, or dissolved salts in ppm at an agreed factor, which is
 * always shown with it.
 *
 * @param text as printed
 * @param perMilliSiemens what it shows for 1 mS/cm
 */
public record SaltsUnit(String text, double perMilliSiemens) {
  static final SaltsUnit MILLISIEMENS = new SaltsUnit("mS/cm", 1);

  /** {@code ppm}, perhaps with its factor: {@code ppm 500}, {@code ppm (640)}, {@code ppm x700}. */
  static final Pattern SHAPE =
      Pattern.compile("(?i)(?:ppm|tds|mg/l)(?:\\s*[(x*@/]?\\s*(500|640|700)\\)?)?");

  static SaltsUnit parse(String text) {
    Matcher salts = SHAPE.matcher(text.strip());
    if (salts.matches()) {
      String factor = salts.group(1);
      if (factor == null) {
        throw new IllegalArgumentException(
            "at which factor?; write ppm 500, ppm 640 or ppm 700, as the meter's manual says");
      }
      return new SaltsUnit("ppm (factor %s)".formatted(factor), Double.parseDouble(factor));
    }
    return ConductivityUnit.parse(text)
        .map(unit -> new SaltsUnit(unit.symbol(), unit.fromMilliSiemensPerCm(1)))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "is no unit a meter shows; write mS/cm, µS/cm, dS/m, CF or ppm 500"));
  }

  /** A conductivity in this unit with its sign, as a meter would round it. */
  String show(double milliSiemensPerCm) {
    double value = milliSiemensPerCm * perMilliSiemens;
    int decimals = perMilliSiemens >= 100 ? 0 : perMilliSiemens >= 10 ? 1 : 2;
    return String.format(Locale.ROOT, "%." + decimals + "f %s", value, text);
  }
}
