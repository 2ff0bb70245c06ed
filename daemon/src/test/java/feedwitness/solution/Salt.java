package feedwitness.solution;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Formulas of salts, and mixtures such as {@code 0.5 NaCl + 0.5 KCl}. */
record Salt(Composition perMole, double molarMass, int equivalents) {
  private static final Map<String, Salt> KNOWN =
      Map.ofEntries(
          entry("NaCl", 1, 0, "Na", 1, "Cl", 1),
          entry("KCl", 1, 0, "K", 1, "Cl", 1),
          entry("NH4Cl", 1, 0, "NH4", 1, "Cl", 1),
          entry("MgCl2", 2, 0, "Mg", 1, "Cl", 2),
          entry("CaCl2", 2, 0, "Ca", 1, "Cl", 2),
          entry("Na2SO4", 2, 0, "Na", 2, "SO4", 1),
          entry("K2SO4", 2, 0, "K", 2, "SO4", 1),
          entry("(NH4)2SO4", 2, 0, "NH4", 2, "SO4", 1),
          entry("MgSO4", 2, 0, "Mg", 1, "SO4", 1),
          entry("NaHCO3", 1, 1.00794, "Na", 1, "CO3", 1),
          entry("KHCO3", 1, 1.00794, "K", 1, "CO3", 1),
          entry("Na2CO3", 2, 0, "Na", 2, "CO3", 1),
          entry("K2CO3", 2, 0, "K", 2, "CO3", 1),
          entry("KNO3", 1, 0, "K", 1, "NO3", 1),
          entry("NaNO3", 1, 0, "Na", 1, "NO3", 1),
          entry("NH4NO3", 1, 0, "NH4", 1, "NO3", 1),
          entry("Ca(NO3)2", 2, 0, "Ca", 1, "NO3", 2),
          entry("KH2PO4", 1, 2.01588, "K", 1, "PO4", 1),
          entry("NaH2PO4", 1, 2.01588, "Na", 1, "PO4", 1),
          entry("K2HPO4", 2, 1.00794, "K", 2, "PO4", 1),
          entry("Na2HPO4", 2, 1.00794, "Na", 2, "PO4", 1),
          entry("H3PO4", 1, 3.02382, "K", 0, "PO4", 1),
          entry("HCl", 1, 1.00794, "K", 0, "Cl", 1),
          entry("HNO3", 1, 1.00794, "K", 0, "NO3", 1),
          entry("NaOH", 1, 17.0073, "Na", 1, "Cl", 0),
          entry("KOH", 1, 17.0073, "K", 1, "Cl", 0));

  private static final Pattern TERM = Pattern.compile("([0-9.]+) (\\S+)");

  private static Map.Entry<String, Salt> entry(
      String name, int equivalents, double rest, String a, double na, String b, double nb) {
    Map<Ion, Double> ions = new EnumMap<>(Ion.class);
    double mass = rest;
    for (Ion ion : Ion.values()) {
      double n = ion.symbol().equals(a) ? na : ion.symbol().equals(b) ? nb : 0;
      if (n > 0) {
        ions.put(ion, n);
        mass += n * ion.molarMass();
      }
    }
    return Map.entry(name, new Salt(Composition.of(ions), mass, equivalents));
  }

  static Salt of(String formula) {
    Salt known = KNOWN.get(formula);
    if (known != null) {
      return known;
    }
    Composition sum = Composition.WATER;
    Matcher terms = TERM.matcher(formula);
    while (terms.find()) {
      Salt part = Objects.requireNonNull(KNOWN.get(terms.group(2)), formula);
      sum = sum.plus(Double.parseDouble(terms.group(1)), part.perMole());
    }
    return new Salt(sum, Double.NaN, 1);
  }
}
