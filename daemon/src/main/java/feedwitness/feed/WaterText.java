package feedwitness.feed;

import feedwitness.solution.Ion;
import java.util.Locale;

/** Concentrations as water reports print them; mmol/L. */
final class WaterText {
  /** mmol of calcium and magnesium for a degree of German hardness: 10 mg CaO in a litre. */
  static final double MMOL_PER_DEGREE = 10 / 56.077;

  private static final double CACO3 = 100.087;

  private WaterText() {}

  /** Of an ion, mmol/L. */
  static double ion(String text, Ion ion) {
    Amounts.Written written = Amounts.written(text);
    double number = written.number();
    String unit = written.unit().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    return switch (unit) {
      case "", "mg/l", "ppm", "g/m3" -> number / ion.molarMass();
      case "mmol/l" -> number;
      case "meq/l", "mval/l" -> number / Math.abs(Atoms.charge(ion));
      case "mg/l n", "mg/l as n", "mg/l no3-n", "mg/l nh4-n" -> nitrogen(number, ion);
      case "mg/l s", "mg/l as s" -> sulfur(number, ion);
      case "°dh", "dh" -> {
        if (ion != Ion.CA && ion != Ion.MG) {
          throw notHere(written.unit());
        }
        yield number * MMOL_PER_DEGREE;
      }
      default -> throw notHere(written.unit());
    };
  }

  private static IllegalArgumentException notHere(String unit) {
    return new IllegalArgumentException(
        "has the unit '%s', which is not known here; write mg/L, meq/L or mmol/L".formatted(unit));
  }

  private static double nitrogen(double number, Ion ion) {
    if (ion != Ion.NO3 && ion != Ion.NH4) {
      throw notHere("mg/L N");
    }
    return number / Atoms.N;
  }

  private static double sulfur(double number, Ion ion) {
    if (ion != Ion.SO4) {
      throw notHere("mg/L S");
    }
    return number / Atoms.S;
  }

  /** Total hardness, mmol/L of calcium and magnesium. */
  static double hardness(String text) {
    Amounts.Written written = Amounts.written(text);
    double number = written.number();
    return switch (written.unit().toLowerCase(Locale.ROOT).replace(" ", "")) {
      case "°dh", "dh" -> number * MMOL_PER_DEGREE;
      case "mmol/l" -> number;
      case "meq/l", "mval/l" -> number / 2;
      case "mg/lcaco3", "ppmcaco3" -> number / CACO3;
      default ->
          throw new IllegalArgumentException(
              "has no unit of hardness; write °dH, mmol/L, meq/L or mg/L CaCO3");
    };
  }

  /** Alkalinity, mmol/L of charge. A number in mg/L means nothing without its substance. */
  static double alkalinity(String text) {
    Amounts.Written written = Amounts.written(text);
    double number = written.number();
    return switch (written.unit().toLowerCase(Locale.ROOT).replaceAll("\\s+as\\s+|\\s+", "")) {
      case "mmol/l", "meq/l", "mval/l" -> number;
      case "mg/lcaco3", "ppmcaco3" -> number / (CACO3 / 2);
      case "mg/lhco3" -> number / 61.017;
      case "°dh", "dh" -> number * 2 * MMOL_PER_DEGREE;
      case "mg/l", "ppm" ->
          throw new IllegalArgumentException(
              "as CaCO3 or as HCO3? they differ by a fifth; write mg/L CaCO3 or mg/L HCO3");
      default ->
          throw new IllegalArgumentException(
              "has no unit of alkalinity; write mmol/L, meq/L, mg/L CaCO3, mg/L HCO3 or °dH");
    };
  }
}
