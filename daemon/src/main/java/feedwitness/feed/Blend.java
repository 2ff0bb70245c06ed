package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.ConductivityOutcome;
import feedwitness.solution.ConductivityOutcome.Predicted;
import java.util.ArrayList;
import java.util.List;

/**
 * Source water with products dissolved in it: a litre of it.
 *
 * @param acid what acid changed in the water before, mol/L; nothing without acid
 */
record Blend(SourceWater water, AcidDose acid, List<Dose> doses) {
  Blend {
    doses = List.copyOf(doses);
  }

  /** mol/L as far as conductivity goes. */
  Composition perLitre() {
    Composition sum = acid.treated(water.perLitre());
    for (Dose dose : doses) {
      sum = sum.plus(dose.gramsPerLitre(), dose.product().conducting());
    }
    return sum;
  }

  /** mg/L of nutrients, those of water and acid included. */
  Nutrients nutrients() {
    return water.nutrients().plus(1, acid.nutrients()).plus(1, ofFeed());
  }

  /** mg/L of nutrients from the products. */
  Nutrients ofFeed() {
    Nutrients sum = Nutrients.NONE;
    for (Dose dose : doses) {
      sum = sum.plus(1000 * dose.gramsPerLitre(), dose.product().nutrients());
    }
    return sum;
  }

  Blend scaled(double factor) {
    return new Blend(water, acid, doses.stream().map(dose -> dose.times(factor)).toList());
  }

  /** With the first products only. */
  Blend first(int count) {
    return new Blend(water, acid, doses.subList(0, count));
  }

  /** mS/cm at 25 °C, the water as measured; NaN where the model ends. */
  double strength(Foresight foresight) {
    return foresight.at25(perLitre()) + water.offset();
  }

  /**
   * Standard uncertainty of the strength, mS/cm: of the model, and of every label by what it adds.
   */
  double uncertainty(Foresight foresight) {
    ConductivityOutcome outcome = foresight.at(perLitre(), Foresight.REFERENCE);
    if (!(outcome instanceof Predicted predicted)) {
      return Double.NaN;
    }
    double sum = predicted.standardUncertainty() * predicted.standardUncertainty();
    for (int i = 0; i < doses.size(); i++) {
      double label = doses.get(i).product().labelUncertainty();
      if (label > 0) {
        List<Dose> others = new ArrayList<>(doses);
        others.remove(i);
        double added =
            predicted.conductivity() - foresight.at25(new Blend(water, acid, others).perLitre());
        sum += label * label * added * added;
      }
    }
    return Math.sqrt(sum);
  }
}
