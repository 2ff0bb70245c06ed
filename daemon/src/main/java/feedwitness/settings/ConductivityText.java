package feedwitness.settings;

import feedwitness.quantity.ConductivityUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Conductivities as people write them, number and unit: {@code 20 mS/cm}, {@code 1413 µS/cm}. */
public final class ConductivityText {
  private static final Pattern SHAPE = Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,9})?)\\s*(\\S.*)");

  private ConductivityText() {}

  /**
   * Reads a number ≥ 0 and a unit; returns mS/cm. A number without its unit is refused: a factor of
   * 1000 lies between the two in common use.
   *
   * @throws IllegalArgumentException if it is no such text, saying why
   */
  public static double parseMilliSiemensPerCm(String text) {
    Values.refuseDecimalComma(text);
    Matcher shape = SHAPE.matcher(text.strip());
    if (!shape.matches()) {
      throw new IllegalArgumentException(
          "'%s' is no conductivity with its unit such as 20 mS/cm or 1413 µS/cm".formatted(text));
    }
    double number = Double.parseDouble(shape.group(1));
    return ConductivityUnit.parse(shape.group(2))
        .map(unit -> unit.toMilliSiemensPerCm(number))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "'%s' has no unit of conductivity we know (%s)"
                        .formatted(text, Words.conductivityUnits())));
  }
}
