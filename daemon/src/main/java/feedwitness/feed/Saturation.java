package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import java.util.List;
import java.util.Map;

/**
 * How full a concentrate is. Every salt that its ions could form is held against its solubility by
 * the product of the ions, whichever products they came from: potassium nitrate with magnesium
 * sulfate may drop potassium sulfate. In mixtures this errs to the safe side; it is no promise for
 * salts that are not in the list, nor for calcium with sulfate or phosphate.
 *
 * @param share of what the water holds; 1 is saturated
 * @param limiting the salt or product that comes first
 */
record Saturation(double share, String limiting) {
  private static final Saturation EMPTY = new Saturation(0, "");

  /** Of a litre of stock at a temperature. */
  static Saturation of(
      List<Dose> inStock, Composition perLitre, double celsius, Foresight foresight) {
    double water = foresight.waterPerLitre(perLitre);
    Composition perKilogram = perLitre.times(1 / water);
    Saturation most = EMPTY;
    for (Salt salt : Salts.ALL) {
      if (salt.trace().isEmpty() && salt.solubility().isPresent() && isFormed(salt, inStock)) {
        double held = salt.solubility().get().perKilogramOfWater(celsius) / salt.baseMass();
        most = most.or(mol(salt, perKilogram) / held, salt.base());
      }
    }
    for (Dose dose : inStock) {
      most = most.or(byItself(dose, water, celsius), dose.product().title());
    }
    return most;
  }

  private Saturation or(double other, String what) {
    return other > share ? new Saturation(other, what) : this;
  }

  /** Salts with acid hydrogen between the common forms only where they were put in. */
  private static boolean isFormed(Salt salt, List<Dose> inStock) {
    boolean common = salt.hydrogens() != 1 && salt.ions().of(Ion.CO3) == 0;
    return common
        || inStock.stream().anyMatch(d -> d.product().salt().filter(salt::equals).isPresent());
  }

  /** mol/kg of the salt with the same product of ions. */
  private static double mol(Salt salt, Composition perKilogram) {
    double urea = salt.ions().neutrals().getOrDefault(NeutralSolute.UREA, 0.0);
    if (urea > 0) {
      return perKilogram.neutrals().getOrDefault(NeutralSolute.UREA, 0.0);
    }
    double logarithm = 0;
    double count = 0;
    for (Map.Entry<Ion, Double> ion : salt.ions().ions().entrySet()) {
      double amount = perKilogram.of(ion.getKey());
      if (amount <= 0) {
        return 0;
      }
      logarithm += ion.getValue() * Math.log(amount / ion.getValue());
      count += ion.getValue();
    }
    return count > 0 ? Math.exp(logarithm / count) : 0;
  }

  /** What a product says of itself: the limit of its maker, or a trace salt's solubility. */
  private static double byItself(Dose dose, double water, double celsius) {
    Product product = dose.product();
    double grams = dose.gramsPerLitre();
    double share = Double.isNaN(product.mostPerLitre()) ? 0 : grams / product.mostPerLitre();
    return product
        .salt()
        .filter(salt -> salt.trace().isPresent())
        .flatMap(
            salt ->
                salt.solubility()
                    .map(
                        s ->
                            grams
                                * salt.baseMass()
                                / salt.molarMass()
                                / water
                                / s.perKilogramOfWater(celsius)))
        .map(own -> Math.max(own, share))
        .orElse(share);
  }
}
