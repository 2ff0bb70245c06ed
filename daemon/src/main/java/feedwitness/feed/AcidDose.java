package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;

/**
 * Acid given to the water before the feed: it turns hydrogen carbonate into carbon dioxide, which
 * leaves, and its own anion takes the place.
 *
 * @param acid which
 * @param neutralised alkalinity taken away, mmol/L
 * @param left alkalinity left, mmol/L
 * @param millilitresPerLitre of the acid as bought, for each litre of water
 */
record AcidDose(Acid acid, double neutralised, double left, double millilitresPerLitre) {
  static final AcidDose NONE = new AcidDose(Acid.NITRIC, 0, Double.NaN, 0);

  /**
   * Acids a grower may use.
   *
   * <p>Phosphoric acid gives one proton near the pH of a feed; sulfuric acid two.
   */
  enum Acid {
    NITRIC("nitric", Ion.NO3, 1, 63.012),
    PHOSPHORIC("phosphoric", Ion.PO4, 1, 97.994),
    SULFURIC("sulfuric", Ion.SO4, 2, 98.072);

    final String word;
    final Ion anion;
    final int protons;
    final double molarMass;

    Acid(String word, Ion anion, int protons, double molarMass) {
      this.word = word;
      this.anion = anion;
      this.protons = protons;
      this.molarMass = molarMass;
    }
  }

  /**
   * For a water.
   *
   * @param alkalinity of the water, mmol/L
   * @param leave of it, mmol/L
   * @param percent of acid by weight
   * @param density g/mL
   */
  static AcidDose of(Acid acid, double alkalinity, double leave, double percent, double density) {
    double neutralise = Math.max(0, alkalinity - leave);
    double millimolPerMillilitre = 10 * percent * density / acid.molarMass;
    return new AcidDose(
        acid,
        neutralise,
        alkalinity - neutralise,
        neutralise / acid.protons / millimolPerMillilitre);
  }

  boolean isNone() {
    return neutralised == 0;
  }

  private double molOfAcid() {
    return neutralised / acid.protons / 1000;
  }

  /** The water after it, mol/L. */
  Composition treated(Composition water) {
    if (isNone()) {
      return water;
    }
    return water
        .with(Ion.CO3, Math.max(0, water.of(Ion.CO3) - neutralised / 1000))
        .with(acid.anion, water.of(acid.anion) + molOfAcid());
  }

  /** mg/L that the acid brings. */
  Nutrients nutrients() {
    return isNone()
        ? Nutrients.NONE
        : Atoms.of(Composition.WATER.with(acid.anion, molOfAcid())).times(1000);
  }
}
