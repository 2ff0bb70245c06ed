package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import java.util.List;
import java.util.Map;

/**
 * The water that feed is mixed with.
 *
 * @param perLitre mol/L, charges balanced
 * @param nutrients mg/L
 * @param alkalinity mmol/L of charge; NaN where nothing is known of it
 * @param measured mS/cm at 25 °C; NaN if it was not measured
 * @param predicted mS/cm at 25 °C, from the ions
 * @param imbalancePercent cations less anions of the report, in percent of their sum; NaN without a
 *     report
 * @param notes what was assumed, what deserves a second look
 */
public record SourceWater(
    Composition perLitre,
    Nutrients nutrients,
    double alkalinity,
    double measured,
    double predicted,
    double imbalancePercent,
    List<String> notes) {

  /** Nothing dissolved. */
  static final SourceWater RAIN =
      new SourceWater(
          Composition.WATER,
          Nutrients.NONE,
          0,
          Double.NaN,
          0,
          Double.NaN,
          List.of("rain water: nothing dissolved, about 0.02 mS/cm"));

  /** mol in a kilogram of hard water of the calcium bicarbonate type, about 0.46 mS/cm at 25 °C. */
  public static final Composition CALCIUM_BICARBONATE_TYPE =
      Composition.of(
          Map.ofEntries(
              Map.entry(Ion.CA, 0.00180),
              Map.entry(Ion.MG, 0.00035),
              Map.entry(Ion.NA, 0.0005),
              Map.entry(Ion.K, 0.00004),
              Map.entry(Ion.CL, 0.0005),
              Map.entry(Ion.SO4, 0.00020),
              Map.entry(Ion.NO3, 0.00004),
              Map.entry(Ion.CO3, 0.0041)));

  private static final double TYPE_ALKALINITY = 3.86;
  private static final int HALVINGS = 50;
  private static final double MOST_OF_TYPE = 20;

  public SourceWater {
    notes = List.copyOf(notes);
  }

  /** mS/cm at 25 °C: as measured, else as predicted. */
  public double strength() {
    return Double.isNaN(measured) ? predicted : measured;
  }

  /** What is measured above the prediction, mS/cm; 0 if it was not measured. */
  double offset() {
    return Double.isNaN(measured) ? 0 : measured - predicted;
  }

  /** Hard water of the usual type, more or less of it, by its conductivity alone. */
  static SourceWater ofStrength(double measured, Foresight foresight) {
    double low = 0;
    double high = MOST_OF_TYPE;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (foresight.at25(CALCIUM_BICARBONATE_TYPE.times(middle)) < measured) {
        low = middle;
      } else {
        high = middle;
      }
    }
    Composition type = CALCIUM_BICARBONATE_TYPE.times(low);
    return new SourceWater(
        type,
        Atoms.of(type).times(1000),
        TYPE_ALKALINITY * low,
        measured,
        foresight.at25(type),
        Double.NaN,
        List.of(
            "no report of the water: taken as hard water of the calcium bicarbonate type; what it"
                + " holds of nutrients is a guess"));
  }
}
