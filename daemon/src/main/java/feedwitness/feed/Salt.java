package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import feedwitness.solution.Trace;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A straight salt, one formula unit of it.
 *
 * @param id as written in recipes
 * @param title as shown
 * @param base formula without water of crystallisation
 * @param hydrate molecules of that water; those of the double salt belong to its base
 * @param ions dissolved from a formula unit; acid hydrogen is not named
 * @param hydrogens acid hydrogen of a formula unit, for its mass
 * @param trace trace element in it, if any, one atom
 * @param baseMass g/mol of the base
 * @param solubility of the base; empty where no figures are kept
 * @param heat taken up on dissolving much diluted, kJ/mol of the hydrate; negative: it warms; NaN
 *     unknown
 */
record Salt(
    String id,
    String title,
    String base,
    double hydrate,
    Composition ions,
    int hydrogens,
    Optional<Nutrient> trace,
    double baseMass,
    Optional<Solubility> solubility,
    double heat) {

  /** Of common ions, its mass being theirs. */
  static Salt of(
      String id,
      String title,
      String base,
      double hydrate,
      Map<Ion, Integer> ions,
      int hydrogens,
      Solubility solubility,
      double heat) {
    Composition composition = Composition.WATER;
    double mass = hydrogens * Atoms.H;
    for (Map.Entry<Ion, Integer> ion : ions.entrySet()) {
      composition = composition.with(ion.getKey(), ion.getValue());
      mass += ion.getValue() * ion.getKey().molarMass();
    }
    return new Salt(
        id,
        title,
        base,
        hydrate,
        composition,
        hydrogens,
        Optional.empty(),
        mass,
        Optional.of(solubility),
        heat);
  }

  /** Of a trace element. */
  static Salt trace(
      String id,
      String title,
      String base,
      double hydrate,
      Nutrient element,
      Composition ions,
      double baseMass,
      Optional<Solubility> solubility) {
    return new Salt(
        id, title, base, hydrate, ions, 0, Optional.of(element), baseMass, solubility, Double.NaN);
  }

  /** Trace of the model and its partner. */
  static Composition with(Trace trace, Map<Ion, Integer> ions) {
    Composition composition = Composition.WATER.with(trace, 1);
    for (Map.Entry<Ion, Integer> ion : ions.entrySet()) {
      composition = composition.with(ion.getKey(), ion.getValue());
    }
    return composition;
  }

  static Salt urea() {
    return new Salt(
        "urea",
        "Urea",
        "CO(NH2)2",
        0,
        Composition.WATER.with(NeutralSolute.UREA, 1),
        0,
        Optional.empty(),
        NeutralSolute.UREA.molarMass(),
        Optional.of(
            new Solubility(
                40.0, 45.9, 51.9, 57.4, 62.3, "Linke, Solubilities, 4th ed.; rounded, ± 2 %")),
        15.3);
  }

  /** g/mol with its water. */
  double molarMass() {
    return baseMass + hydrate * Atoms.WATER;
  }

  /** {@code MgSO4·7H2O}. */
  String formula() {
    if (hydrate == 0) {
      return base;
    }
    String number =
        hydrate == 1 ? "" : hydrate == Math.rint(hydrate) ? "" + (int) hydrate : "" + hydrate;
    return base + "·" + number + "H2O";
  }

  /** mol in a gram. */
  Composition perGram() {
    return ions.times(1 / molarMass());
  }

  /** Grams of elements in a gram. */
  Nutrients nutrients() {
    Nutrients main = Atoms.of(perGram());
    return trace.map(t -> main.with(t, Atoms.trace(t) / molarMass())).orElse(main);
  }

  /** As a product without impurities. */
  Product product() {
    return new Product(
        id,
        title + ", " + formula(),
        perGram(),
        nutrients(),
        Double.NaN,
        Optional.of(this),
        0,
        1,
        Double.NaN,
        Optional.empty(),
        List.of());
  }
}
