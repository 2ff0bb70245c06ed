package feedwitness.solution;

import feedwitness.solution.ConductivityOutcome.Refused;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the model may be asked, and how it says no. */
final class Limits {
  /** mol/kg of water; above the solubility of most salts, and beyond the ionic strength anyhow. */
  static final double MAX_ION = 10;

  static final double MAX_TRACE = 0.02;
  static final double MAX_NEUTRAL = 5;
  static final double MIN_PH = -1;
  static final double MAX_PH = 14.5;

  /** Share of the charge that free acid or base may carry to close a balance without a pH. */
  static final double MAX_CLOSING_SHARE = 0.03;

  /** mol/kg: pure rain and very soft water may be closed by this much whatever its share. */
  static final double FREE_CLOSING = 2e-4;

  /** Share of the charge that may be missing where the pH is given. */
  static final double MAX_IMBALANCE = 0.15;

  private static final String MOL = "mol/kg";
  private static final String TYPED =
      "look for a slip of the decimal point or of the unit: amounts are mol in a kilogram of water";

  @Nullable Refused input(Composition composition, double celsius) {
    if (!(celsius >= ConductivityModel.MIN_CELSIUS && celsius <= ConductivityModel.MAX_CELSIUS)) {
      return new Refused(
          "temperature",
          celsius,
          celsius < ConductivityModel.MIN_CELSIUS
              ? ConductivityModel.MIN_CELSIUS
              : ConductivityModel.MAX_CELSIUS,
          "°C",
          "the model holds from 0 to 45 °C");
    }
    for (Map.Entry<Ion, Double> ion : composition.ions().entrySet()) {
      Refused refused = amount(ion.getKey().symbol(), ion.getValue(), MAX_ION);
      if (refused != null) {
        return refused;
      }
    }
    for (Map.Entry<Trace, Double> trace : composition.traces().entrySet()) {
      Refused refused = amount(trace.getKey().symbol(), trace.getValue(), MAX_TRACE);
      if (refused != null) {
        return refused;
      }
    }
    for (Map.Entry<NeutralSolute, Double> solute : composition.neutrals().entrySet()) {
      Refused refused = amount(solute.getKey().name(), solute.getValue(), MAX_NEUTRAL);
      if (refused != null) {
        return refused;
      }
    }
    return null;
  }

  private static @Nullable Refused amount(String field, double value, double limit) {
    if (value >= 0 && value <= limit) {
      return null;
    }
    return value < 0
        ? new Refused(field, value, 0, MOL, "an amount cannot be negative")
        : new Refused(field, value, limit, MOL, TYPED);
  }

  @Nullable Refused pH(double pH) {
    if (pH >= MIN_PH && pH <= MAX_PH) {
      return null;
    }
    return new Refused(
        "pH",
        pH,
        pH < MIN_PH ? MIN_PH : MAX_PH,
        "",
        "leave it out to have the charge balance find it");
  }

  @Nullable Refused solution(
      Composition composition, Solution solution, boolean closed, ReactionTable table) {
    double strength = solution.dissolved.ionicStrength;
    if (strength > ConductivityModel.MAX_IONIC_STRENGTH) {
      return new Refused(
          "ionic strength",
          strength,
          ConductivityModel.MAX_IONIC_STRENGTH,
          MOL,
          "dilute the solution: the model is measured against data only up to this strength");
    }
    return closed ? closing(composition, solution, table) : imbalance(solution, table);
  }

  private static @Nullable Refused closing(
      Composition composition, Solution solution, ReactionTable table) {
    double[] molality = solution.dissolved.molality;
    double acid = molality[0] - molality[table.indexOf("OH-")];
    double allowed = Math.max(FREE_CLOSING, MAX_CLOSING_SHARE * charge(solution, table));
    if (Math.abs(acid) <= allowed || isAcidOrBase(composition)) {
      return null;
    }
    double sum = -SpeciationSolver.totals(composition)[0];
    return new Refused(
        "charge balance",
        Math.abs(acid),
        allowed,
        MOL,
        "%s: only free %s, at pH %s, would balance the charges (cations less anions %s mol/kg); an ion is missing or mistyped, or give the pH if it is so"
            .formatted(
                acid > 0 ? "too many anions" : "too many cations",
                acid > 0 ? "acid" : "base",
                Figures.plain(Math.round(solution.dissolved.pH * 100) / 100.0),
                Figures.plain(sum)));
  }

  /** Acids without any salt, and potassium or sodium hydroxide alone, are what they say. */
  private static boolean isAcidOrBase(Composition composition) {
    double cations = 0;
    double anions = 0;
    for (Ion ion : Ion.values()) {
      if (ion.charge() < 0) {
        anions += composition.of(ion);
      } else {
        cations += composition.of(ion);
      }
    }
    double strongBase = composition.of(Ion.K) + composition.of(Ion.NA);
    return cations == 0 || (anions == 0 && cations == strongBase);
  }

  private static @Nullable Refused imbalance(Solution solution, ReactionTable table) {
    double net = Math.abs(solution.dissolved.netCharge);
    double allowed = Math.max(FREE_CLOSING, MAX_IMBALANCE * charge(solution, table));
    if (net <= allowed) {
      return null;
    }
    return new Refused(
        "charge balance",
        net,
        allowed,
        MOL,
        "too many %s for this pH; an ion is missing or mistyped, or leave the pH out"
            .formatted(solution.dissolved.netCharge > 0 ? "cations" : "anions"));
  }

  /** Charge carried by either side, mol/kg: the mean of both. */
  static double charge(Solution solution, ReactionTable table) {
    double sum = 0;
    for (int i = 0; i < table.size(); i++) {
      sum += Math.abs(table.charge[i]) * solution.dissolved.molality[i];
    }
    return sum / 2;
  }

  Refused unsolved(double celsius) {
    return new Refused(
        "composition",
        celsius,
        ConductivityModel.MAX_CELSIUS,
        "°C",
        "no speciation was found for this mixture; change the amounts a little and say so to the makers");
  }
}
