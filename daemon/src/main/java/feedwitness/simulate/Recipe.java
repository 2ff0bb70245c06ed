package feedwitness.simulate;

import java.time.DayOfWeek;

/** What the grower works out once: grams and ratios for the strengths of this nursery. */
final class Recipe {
  /** What the injector can be set to. */
  enum Strength {
    GROWING_ON(1.0),
    HEAVY_FEEDERS(0.8),
    SEEDLINGS(0.45),
    PLAIN(1.0);

    private final double flowShare;

    Strength(double flowShare) {
      this.flowShare = flowShare;
    }

    /** Flow of the beds that take it, as a share of the line's full flow. */
    double flowShare() {
      return flowShare;
    }
  }

  private final Parameters parameters;
  private final ConductivityFormula formula;
  private final double stockGrams;

  Recipe(Parameters parameters, ConductivityFormula formula) {
    this.parameters = parameters;
    this.formula = formula;
    stockGrams =
        parameters.get(Parameter.INJECTOR_RATIO) * grams(parameters.get(Parameter.GROWING_ON));
  }

  private double grams(double strength) {
    return formula.saltFor(parameters.get(Parameter.SOURCE_STRENGTH), strength);
  }

  /** Feed in the stock barrel as intended, g/L. */
  double stockGramsPerLitre() {
    return stockGrams;
  }

  /** Grams for each litre of the tank. */
  double tankGramsPerLitre(double mineral, double strength) {
    return formula.saltFor(mineral, strength);
  }

  /** What the line should carry, mS/cm at 25 °C, source water included. */
  double target(Strength strength) {
    return switch (strength) {
      case GROWING_ON -> parameters.get(Parameter.GROWING_ON);
      case HEAVY_FEEDERS -> parameters.get(Parameter.HEAVY_FEEDERS);
      case SEEDLINGS -> parameters.get(Parameter.SEEDLINGS);
      case PLAIN -> parameters.get(Parameter.SOURCE_STRENGTH);
    };
  }

  /** Litres of feed from one of stock; infinite for plain water. */
  double ratio(Strength strength) {
    double wanted = strength == Strength.PLAIN ? 0 : grams(target(strength));
    return wanted > 0 ? stockGrams / wanted : Double.POSITIVE_INFINITY;
  }

  /** Days on which the tank is filled and mixed. */
  static boolean mixes(DayOfWeek day) {
    return day == DayOfWeek.MONDAY || day == DayOfWeek.WEDNESDAY || day == DayOfWeek.FRIDAY;
  }
}
