package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import feedwitness.solution.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the label of a compound feed declares, turned into ions by the rule that assumes least:
 * nitrogen in its forms as printed, phosphate with one negative charge, sulfur as sulfate, trace
 * elements bare or chelated as printed; what is missing to balance the charges is sodium, or
 * sulfate if the label names no sulfur, else chloride. The rule's doubt is part of the uncertainty.
 *
 * @param grams of element in a gram of product
 * @param unassignedNitrogen grams of nitrogen in a gram whose form is not printed
 * @param chelated trace elements printed as chelated
 */
record Label(Map<Nutrient, Double> grams, double unassignedNitrogen, Set<Nutrient> chelated) {
  /** Labels may differ from the bag by their legal tolerance; taken as standard uncertainty. */
  private static final double TOLERANCE = 0.03;

  /** What an unnamed ion may conduct against the one assumed. */
  private static final double UNNAMED = 0.3;

  Label {
    grams = Map.copyOf(grams);
    chelated = Set.copyOf(chelated);
  }

  Product product(
      String id, String title, double density, double mostPerLitre, Optional<Product.Rate> rate) {
    List<String> notes = new ArrayList<>();
    Nutrients nutrients = nutrients(notes);
    Composition named = named(nutrients);
    double missing = net(named);
    Composition whole = closed(named, missing, nutrients, notes);
    double charge = Math.max(side(whole, 1), side(whole, -1));
    double doubt = charge > 0 ? UNNAMED * Math.abs(missing) / charge : 0;
    double forms = nutrients.nitrogen() > 0 ? unassignedNitrogen / nutrients.nitrogen() : 0;
    return new Product(
        id,
        title,
        whole,
        nutrients,
        density,
        Optional.empty(),
        Math.sqrt(TOLERANCE * TOLERANCE + doubt * doubt + UNNAMED * UNNAMED * forms * forms / 4),
        1,
        mostPerLitre,
        rate,
        notes);
  }

  private Nutrients nutrients(List<String> notes) {
    Map<Nutrient, Double> all = new EnumMap<>(Nutrient.class);
    all.putAll(grams);
    if (unassignedNitrogen > 0) {
      all.merge(Nutrient.NITRATE_N, unassignedNitrogen / 2, Double::sum);
      all.merge(Nutrient.AMMONIUM_N, unassignedNitrogen / 2, Double::sum);
      notes.add(
          "the forms of %s %% nitrogen are not given: taken as half nitrate, half ammonium; copy them"
                  .formatted(Text.plain(100 * unassignedNitrogen))
              + " from the label, urea does not conduct");
    }
    return new Nutrients(all);
  }

  private Composition named(Nutrients of) {
    Map<Ion, Double> ions = new EnumMap<>(Ion.class);
    put(ions, Ion.NO3, of.of(Nutrient.NITRATE_N) / Atoms.N);
    put(ions, Ion.NH4, of.of(Nutrient.AMMONIUM_N) / Atoms.N);
    put(ions, Ion.PO4, of.of(Nutrient.P) / Atoms.P);
    put(ions, Ion.SO4, of.of(Nutrient.S) / Atoms.S);
    put(ions, Ion.K, of.of(Nutrient.K) / Ion.K.molarMass());
    put(ions, Ion.CA, of.of(Nutrient.CA) / Ion.CA.molarMass());
    put(ions, Ion.MG, of.of(Nutrient.MG) / Ion.MG.molarMass());
    put(ions, Ion.NA, of.of(Nutrient.NA) / Ion.NA.molarMass());
    put(ions, Ion.CL, of.of(Nutrient.CL) / Ion.CL.molarMass());
    Composition composition = Composition.of(ions);
    double urea = of.of(Nutrient.UREA_N) / Atoms.N / 2;
    composition = urea > 0 ? composition.with(NeutralSolute.UREA, urea) : composition;
    for (Map.Entry<Nutrient, Double> each : of.amounts().entrySet()) {
      if (each.getKey().isTrace() && each.getValue() > 0) {
        Trace trace = trace(each.getKey());
        double before = composition.traces().getOrDefault(trace, 0.0);
        composition =
            composition.with(trace, before + each.getValue() / Atoms.trace(each.getKey()));
      }
    }
    return composition;
  }

  private static void put(Map<Ion, Double> ions, Ion ion, double mol) {
    if (mol > 0) {
      ions.put(ion, mol);
    }
  }

  private Trace trace(Nutrient element) {
    if (!chelated.contains(element)) {
      return Atoms.bare(element);
    }
    return element == Nutrient.FE ? Trace.CHELATE_1 : Trace.CHELATE_2;
  }

  private static Composition closed(
      Composition named, double missing, Nutrients nutrients, List<String> notes) {
    if (missing == 0) {
      return named;
    }
    boolean acid = missing > 0;
    Ion ion = acid ? (nutrients.of(Nutrient.S) > 0 ? Ion.CL : Ion.SO4) : Ion.NA;
    notes.add(
        "%s balances the charges of the label (%s mmol in a gram), which need not name it"
            .formatted(
                ion == Ion.NA ? "sodium" : ion == Ion.CL ? "chloride" : "sulfate",
                Text.figures(1000 * Math.abs(missing / ion.charge()), 2)));
    return named.with(ion, named.of(ion) + Math.abs(missing / ion.charge()));
  }

  /** Cations less anions, mol of charge in a gram. */
  static double net(Composition composition) {
    return side(composition, 1) - side(composition, -1);
  }

  private static double side(Composition composition, int sign) {
    double sum = 0;
    for (Map.Entry<Ion, Double> ion : composition.ions().entrySet()) {
      sum += Math.max(0, sign * Atoms.charge(ion.getKey())) * ion.getValue();
    }
    for (Map.Entry<Trace, Double> trace : composition.traces().entrySet()) {
      sum += Math.max(0, sign * charge(trace.getKey())) * trace.getValue();
    }
    return sum;
  }

  private static int charge(Trace trace) {
    return switch (trace) {
      case IRON, MANGANESE, ZINC, COPPER -> 2;
      case CHELATE_1 -> -1;
      case CHELATE_2, MOLYBDATE -> -2;
      case BORIC_ACID -> 0;
    };
  }
}
