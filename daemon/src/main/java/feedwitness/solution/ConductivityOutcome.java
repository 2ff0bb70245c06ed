package feedwitness.solution;

/** What the model answers: a prediction, or which input lies beyond what it can be asked. */
public sealed interface ConductivityOutcome {

  /**
   * A prediction.
   *
   * @param conductivity mS/cm at the temperature asked for
   * @param standardUncertainty mS/cm, standard uncertainty (one standard deviation)
   * @param ionicStrength mol/kg of water, ion pairs taken into account
   * @param pH as given, or as the charge balance asks
   * @param density of the solution, g/cm³
   * @param relativeViscosity η/η_water, unitless
   * @param waterPerLitre kg of water in a litre of the solution: mol/L = mol/kg times this
   */
  record Predicted(
      double conductivity,
      double standardUncertainty,
      double ionicStrength,
      double pH,
      double density,
      double relativeViscosity,
      double waterPerLitre)
      implements ConductivityOutcome {}

  /**
   * The model cannot say.
   *
   * @param field what is out of range: an ion, a temperature, the charge balance
   * @param value as found, in {@code unit}
   * @param limit the one it passes, in {@code unit}
   * @param unit empty where the value has none
   * @param remedy what to do
   */
  record Refused(String field, double value, double limit, String unit, String remedy)
      implements ConductivityOutcome {

    /** In one line: {@code NO3: -0.1 mol/kg, limit 0 mol/kg; remedy}. */
    public String message() {
      String after = unit.isEmpty() ? "" : " " + unit;
      return "%s: %s%s is beyond the limit %s%s; %s"
          .formatted(field, Figures.plain(value), after, Figures.plain(limit), after, remedy);
    }
  }
}
