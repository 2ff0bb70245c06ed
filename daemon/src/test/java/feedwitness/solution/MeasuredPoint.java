package feedwitness.solution;

import java.util.List;
import java.util.Objects;

/**
 * A published measurement beside what the model says.
 *
 * @param ionicStrength mol/kg
 * @param measured mS/cm
 * @param calculated mS/cm
 * @param uncertainty standard uncertainty the model states, mS/cm
 */
record MeasuredPoint(
    String set,
    String salt,
    double celsius,
    double ionicStrength,
    double measured,
    double calculated,
    double uncertainty) {

  /** The committed excerpt, worked out. */
  static List<MeasuredPoint> all(ConductivityModel model) {
    return Csv.resource("measured.csv").stream()
        .map(
            row ->
                of(
                    model,
                    row.text("set"),
                    row.text("salt"),
                    row.number("celsius"),
                    row.number("amount"),
                    row.text("unit"),
                    row.number("value"),
                    row.text("quantity").equals("lambda")))
        .toList();
  }

  /**
   * @param unit m, c or w: mol/kg of water, mol/L, % by mass
   * @param equivalent whether the value is an equivalent conductivity, S cm²/eq, rather than mS/cm
   */
  static MeasuredPoint of(
      ConductivityModel model,
      String set,
      String formula,
      double celsius,
      double amount,
      String unit,
      double value,
      boolean equivalent) {
    Salt salt = Salt.of(formula);
    double molality = unit.equals("w") ? amount / (100 - amount) * 1000 / salt.molarMass() : amount;
    Solution solution = solution(model, salt, molality, celsius);
    for (int i = 0; i < 8 && unit.equals("c"); i++) {
      molality = amount / solution.bulk.waterPerLitre();
      solution = solution(model, salt, molality, celsius);
    }
    double perLitre = molality * solution.bulk.waterPerLitre() * salt.equivalents();
    return new MeasuredPoint(
        set,
        formula,
        celsius,
        solution.dissolved.ionicStrength,
        equivalent ? value * perLitre : value,
        solution.conductivity,
        model.uncertainty(salt.perMole().times(molality), solution));
  }

  private static Solution solution(
      ConductivityModel model, Salt salt, double molality, double celsius) {
    return Objects.requireNonNull(
        model.solution(salt.perMole().times(molality), celsius, Double.NaN));
  }

  /** |calculated − measured| / measured, %. */
  double errorPercent() {
    return 100 * Math.abs(calculated / measured - 1);
  }

  /** Signed, in stated standard uncertainties. */
  double normalised() {
    return (calculated - measured) / uncertainty;
  }
}
