package feedwitness.solution;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;

/**
 * Strength against dilution, both ways: what a share of a concentrate dissolved in a water conducts
 * at 25 °C, and which share brings that water to a strength.
 *
 * <p>A <em>share</em> of 1 means: to each kilogram of water the solutes of one kilogram of water of
 * the concentrate are added. Immutable.
 */
public final class StrengthCurve {
  private static final double REFERENCE = 25;
  private static final int STEPS = 60;

  private final ConductivityModel model;
  private final Composition water;
  private final Composition concentrate;
  private final double maxShare;
  private final Predicted atNone;
  private final Predicted atMost;

  private StrengthCurve(
      ConductivityModel model,
      Composition water,
      Composition concentrate,
      double maxShare,
      Predicted atNone,
      Predicted atMost) {
    this.model = model;
    this.water = water;
    this.concentrate = concentrate;
    this.maxShare = maxShare;
    this.atNone = atNone;
    this.atMost = atMost;
  }

  /**
   * A strength.
   *
   * @param value mS/cm at 25 °C
   * @param standardUncertainty mS/cm
   * @param added of it by the concentrate: the strength less that of the water, mS/cm
   */
  public record Strength(double value, double standardUncertainty, double added) {}

  /**
   * A share of the concentrate.
   *
   * @param value unitless
   * @param standardUncertainty unitless: that of the model, turned into a share
   */
  public record Share(double value, double standardUncertainty) {}

  /**
   * @param water the water it is dissolved in
   * @param concentrate what is dissolved; per kilogram of water
   * @param maxShare above 0; the curve must rise up to it and stay within the model
   */
  public static Answer<StrengthCurve> of(
      ConductivityModel model, Composition water, Composition concentrate, double maxShare) {
    if (!(maxShare > 0)) {
      return refused("share", maxShare, 0, "", "it must be above 0");
    }
    ConductivityOutcome none = model.predict(water, REFERENCE);
    if (none instanceof Refused refused) {
      return new Answer.Unknown<>(refused);
    }
    ConductivityOutcome most = model.predict(water.plus(maxShare, concentrate), REFERENCE);
    if (most instanceof Refused refused) {
      return new Answer.Unknown<>(refused);
    }
    return new Answer.Known<>(
        new StrengthCurve(model, water, concentrate, maxShare, (Predicted) none, (Predicted) most));
  }

  /**
   * Strength at a share.
   *
   * @param share 0 to the largest of this curve
   */
  public Answer<Strength> strength(double share) {
    if (!(share >= 0 && share <= maxShare)) {
      return refused(
          "share", share, share < 0 ? 0 : maxShare, "", "choose a share within the curve");
    }
    ConductivityOutcome outcome = at(share);
    if (outcome instanceof Refused refused) {
      return new Answer.Unknown<>(refused);
    }
    Predicted value = (Predicted) outcome;
    return new Answer.Known<>(
        new Strength(
            value.conductivity(),
            value.standardUncertainty(),
            value.conductivity() - atNone.conductivity()));
  }

  /**
   * Share that brings the water to a strength.
   *
   * @param strength mS/cm at 25 °C, the water's own included
   */
  public Answer<Share> share(double strength) {
    if (!(strength >= atNone.conductivity())) {
      return refused(
          "strength",
          strength,
          atNone.conductivity(),
          "mS/cm",
          "the water alone is stronger; use softer water or choose more");
    }
    if (strength > atMost.conductivity()) {
      return refused(
          "strength",
          strength,
          atMost.conductivity(),
          "mS/cm",
          "this much concentrate does not reach it; choose less or a stronger concentrate");
    }
    double low = 0;
    double high = maxShare;
    for (int i = 0; i < STEPS && high - low > 1e-12 * maxShare; i++) {
      double middle = (low + high) / 2;
      ConductivityOutcome outcome = at(middle);
      if (outcome instanceof Refused refused) {
        return new Answer.Unknown<>(refused);
      }
      if (((Predicted) outcome).conductivity() < strength) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return shareWithUncertainty((low + high) / 2);
  }

  private Answer<Share> shareWithUncertainty(double share) {
    double step = Math.max(1e-4 * maxShare, 1e-3 * share);
    ConductivityOutcome here = at(share);
    ConductivityOutcome above = at(Math.min(maxShare, share + step));
    ConductivityOutcome below = at(Math.max(0, share - step));
    if (here instanceof Predicted value
        && above instanceof Predicted more
        && below instanceof Predicted less) {
      double across = Math.min(maxShare, share + step) - Math.max(0, share - step);
      double slope = (more.conductivity() - less.conductivity()) / across;
      return new Answer.Known<>(new Share(share, value.standardUncertainty() / slope));
    }
    return new Answer.Known<>(new Share(share, Double.POSITIVE_INFINITY));
  }

  private static <T> Answer<T> refused(
      String field, double value, double limit, String unit, String remedy) {
    return new Answer.Unknown<>(new Refused(field, value, limit, unit, remedy));
  }

  private ConductivityOutcome at(double share) {
    return model.predict(water.plus(share, concentrate), REFERENCE);
  }

  /** Largest share of this curve. */
  public double maxShare() {
    return maxShare;
  }

  /**
   * Share for an injector or a tank: one litre of stock made up to {@code litresOfFeed}.
   *
   * @param stockWaterPerLitre kg of water in a litre of stock, see {@link Predicted}
   * @param waterPerLitre kg in a litre of the water it is mixed with, near 0.998
   * @param litresOfFeed that one litre of stock makes, above 1; volumes are taken to add, which is
   *     so within 0.1 % below a tenth of stock
   */
  public static double shareOfStock(
      double stockWaterPerLitre, double waterPerLitre, double litresOfFeed) {
    if (!(litresOfFeed > 1)) {
      throw new IllegalArgumentException(
          "one litre of stock cannot make %s litres of feed; it must be above 1"
              .formatted(litresOfFeed));
    }
    return stockWaterPerLitre / (stockWaterPerLitre + (litresOfFeed - 1) * waterPerLitre);
  }
}
