package feedwitness.solution;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;

/**
 * The model for one concentrate in one water, tabled for the live path: conductivity by share and
 * temperature within 0.05 % of the full model, in well under a microsecond and without garbage.
 *
 * <p>Tabled is the conductivity divided by the formal ionic strength, which is nearly straight in
 * the square root of that strength; cubic interpolation both ways. Below a formal ionic strength of
 * 0.0001 mol/kg (some 0.01 mS/cm) it is held, and the 0.05 % is not claimed. 0 to 45 °C. Immutable.
 */
public final class FeedTable {
  private static final int STRENGTHS = 97;
  private static final int TEMPERATURES = 13;
  private static final double FIRST_CELSIUS = ConductivityModel.MIN_CELSIUS;
  private static final double LAST_CELSIUS = ConductivityModel.MAX_CELSIUS;
  private static final double PER_NODE = (LAST_CELSIUS - FIRST_CELSIUS) / (TEMPERATURES - 1);
  private static final double LEAST_STRENGTH = 1e-4;
  private static final int MAX_STEPS = 60;

  /** Relative; far below the 0.05 % of the table. */
  private static final double CLOSE_ENOUGH = 1e-7;

  private final double waterStrength;
  private final double concentrateStrength;
  private final double maxShare;
  private final double firstRoot;
  private final double rootPerNode;
  private final double[] grid;

  private FeedTable(
      double waterStrength,
      double concentrateStrength,
      double maxShare,
      double firstRoot,
      double rootPerNode,
      double[] grid) {
    this.waterStrength = waterStrength;
    this.concentrateStrength = concentrateStrength;
    this.maxShare = maxShare;
    this.firstRoot = firstRoot;
    this.rootPerNode = rootPerNode;
    this.grid = grid;
  }

  /**
   * Works the table out: some 1300 answers of the full model.
   *
   * @param water the water it is dissolved in
   * @param concentrate with ions in it; see {@link StrengthCurve} for the share
   * @param maxShare above 0
   */
  public static Answer<FeedTable> of(
      ConductivityModel model, Composition water, Composition concentrate, double maxShare) {
    double ofWater = formal(water);
    double ofConcentrate = formal(concentrate);
    double most = ofWater + maxShare * ofConcentrate;
    if (!(maxShare > 0 && most > 2 * LEAST_STRENGTH && ofConcentrate > 0)) {
      return new Answer.Unknown<>(
          new Refused(
              "share",
              maxShare,
              0,
              "",
              "a table needs a share above 0 of a concentrate with ions in it"));
    }
    double first = Math.sqrt(Math.max(LEAST_STRENGTH, ofWater));
    double perNode = (Math.sqrt(most) - first) / (STRENGTHS - 1);
    double[] grid = new double[STRENGTHS * TEMPERATURES];
    for (int i = 0; i < STRENGTHS; i++) {
      double root = first + i * perNode;
      double share = Math.max(0, (root * root - ofWater) / ofConcentrate);
      Composition mixture = water.plus(Math.min(share, maxShare), concentrate);
      for (int j = 0; j < TEMPERATURES; j++) {
        ConductivityOutcome outcome = model.predict(mixture, FIRST_CELSIUS + j * PER_NODE);
        if (outcome instanceof Refused refused) {
          return new Answer.Unknown<>(refused);
        }
        grid[i * TEMPERATURES + j] = ((Predicted) outcome).conductivity() / (root * root);
      }
    }
    return new Answer.Known<>(
        new FeedTable(ofWater, ofConcentrate, maxShare, first, perNode, grid));
  }

  /**
   * Half the charge squared times the amount, nothing paired; phosphate and carbonate as single.
   */
  private static double formal(Composition composition) {
    double[] totals = SpeciationSolver.totals(composition);
    double sum = 0;
    for (Ion ion : Ion.values()) {
      int z = ion == Ion.PO4 || ion == Ion.CO3 ? 1 : ion.charge();
      sum += z * z * totals[ion.component()] / 2;
    }
    return sum;
  }

  /** Largest share tabled. */
  public double maxShare() {
    return maxShare;
  }

  /**
   * Conductivity.
   *
   * @param share 0 to the largest share
   * @param celsius 0 to 45 °C
   * @return mS/cm; NaN where share or temperature is beyond the table
   */
  public double conductivity(double share, double celsius) {
    if (!(share >= 0 && share <= maxShare && celsius >= FIRST_CELSIUS && celsius <= LAST_CELSIUS)) {
      return Double.NaN;
    }
    double strength = waterStrength + share * concentrateStrength;
    return strength * perStrength(Math.sqrt(strength), celsius);
  }

  /**
   * The share at which this feed would conduct as measured.
   *
   * @param measured mS/cm at {@code celsius}
   * @param celsius 0 to 45 °C
   * @return NaN where no share of the table does
   */
  public double share(double measured, double celsius) {
    double low = 0;
    double high = maxShare;
    double below = conductivity(low, celsius) - measured;
    double above = conductivity(high, celsius) - measured;
    if (!(below <= 0 && above >= 0)) {
      return Double.NaN;
    }
    double enough = CLOSE_ENOUGH * measured;
    int side = 0;
    for (int i = 0; i < MAX_STEPS; i++) {
      double share = low + (high - low) * below / (below - above);
      double off = conductivity(share, celsius) - measured;
      if (Math.abs(off) <= enough) {
        return share;
      }
      // an end that stays twice counts half, so that both ends close in
      if (off < 0) {
        low = share;
        below = off;
        above = side < 0 ? above / 2 : above;
        side = -1;
      } else {
        high = share;
        above = off;
        below = side > 0 ? below / 2 : below;
        side = 1;
      }
    }
    return (low + high) / 2;
  }

  /**
   * A measured conductivity referred to 25 °C, taken for this feed at whatever strength.
   *
   * @param measured mS/cm at {@code celsius}
   * @param celsius 0 to 45 °C
   * @return mS/cm at 25 °C; NaN where no share of the table conducts so
   */
  public double at25(double measured, double celsius) {
    return conductivity(share(measured, celsius), 25);
  }

  private double perStrength(double root, double celsius) {
    double across = Math.max(0, (root - firstRoot) / rootPerNode);
    double along = (celsius - FIRST_CELSIUS) / PER_NODE;
    int i = first(across, STRENGTHS);
    int j = first(along, TEMPERATURES);
    double x = across - i;
    double y = along - j;
    int at = i * TEMPERATURES + j;
    return cubic(
        x,
        row(at, y),
        row(at + TEMPERATURES, y),
        row(at + 2 * TEMPERATURES, y),
        row(at + 3 * TEMPERATURES, y));
  }

  private static int first(double place, int nodes) {
    return Math.max(0, Math.min((int) place - 1, nodes - 4));
  }

  private double row(int at, double y) {
    return cubic(y, grid[at], grid[at + 1], grid[at + 2], grid[at + 3]);
  }

  /** Lagrange through four values at 0, 1, 2, 3. */
  private static double cubic(double x, double a, double b, double c, double d) {
    double x1 = x - 1;
    double x2 = x - 2;
    double x3 = x - 3;
    return (-a * x1 * x2 * x3 + 3 * b * x * x2 * x3 - 3 * c * x * x1 * x3 + d * x * x1 * x2) / 6;
  }
}
