package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.ConductivityModel;
import feedwitness.solution.ConductivityOutcome;
import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;

/** The conductivity model asked in mol per litre, as recipes are made. */
final class Foresight {
  static final double REFERENCE = 25;

  /** Volumes are measured in the shed rather than at 25 °C. */
  private static final double MEASURING_CELSIUS = 20;

  private static final double WATER_PER_LITRE = 0.998;
  private static final int ROUNDS = 3;
  private static final double CLOSE = 1e-5;

  private final ConductivityModel model;

  Foresight(ConductivityModel model) {
    this.model = model;
  }

  /** Kilograms of water in a litre of this solution; as in plain water where the model ends. */
  double waterPerLitre(Composition perLitre) {
    double water = WATER_PER_LITRE;
    for (int i = 0; i < ROUNDS; i++) {
      ConductivityOutcome outcome = model.predict(perLitre.times(1 / water), MEASURING_CELSIUS);
      if (!(outcome instanceof Predicted predicted)) {
        return water;
      }
      double better = predicted.waterPerLitre();
      if (Math.abs(better - water) < CLOSE) {
        return better;
      }
      water = better;
    }
    return water;
  }

  /**
   * Conductivity.
   *
   * @param perLitre mol/L
   * @param celsius 0 to 45 °C
   */
  ConductivityOutcome at(Composition perLitre, double celsius) {
    return model.predict(perLitre.times(1 / waterPerLitre(perLitre)), celsius);
  }

  /** mS/cm at 25 °C; NaN where the model cannot say. */
  double at25(Composition perLitre) {
    return value(at(perLitre, REFERENCE));
  }

  static double value(ConductivityOutcome outcome) {
    return outcome instanceof Predicted predicted ? predicted.conductivity() : Double.NaN;
  }

  static String why(ConductivityOutcome outcome) {
    return outcome instanceof Refused refused ? refused.message() : "";
  }
}
