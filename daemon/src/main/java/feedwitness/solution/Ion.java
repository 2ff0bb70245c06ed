package feedwitness.solution;

/**
 * What a composition is given in: each entry stands for the total of an element or group, in
 * whatever form it takes in solution. {@link #PO4} is all phosphate (so KH2PO4 gives 1 K and 1
 * PO4), {@link #CO3} all carbonate with hydrogen carbonate and dissolved carbon dioxide, {@link
 * #NH4} all ammonia. Hydrogen is not given: it follows from the charge balance or the pH.
 */
public enum Ion {
  K(1, "K", "K+", 1, 39.0983),
  NA(2, "Na", "Na+", 1, 22.98977),
  NH4(3, "NH4", "NH4+", 1, 18.0385),
  CA(4, "Ca", "Ca+2", 2, 40.078),
  MG(5, "Mg", "Mg+2", 2, 24.305),
  CL(6, "Cl", "Cl-", -1, 35.453),
  NO3(7, "NO3", "NO3-", -1, 62.0049),
  SO4(8, "SO4", "SO4-2", -2, 96.0626),
  PO4(9, "PO4", "PO4-3", -3, 94.9714),
  CO3(10, "CO3", "CO3-2", -2, 60.0089);

  private final int component;
  private final String symbol;
  private final String species;
  private final int charge;
  private final double molarMass;

  Ion(int component, String symbol, String species, int charge, double molarMass) {
    this.component = component;
    this.symbol = symbol;
    this.species = species;
    this.charge = charge;
    this.molarMass = molarMass;
  }

  /** The name in tables, without charge: {@code NO3}. */
  public String symbol() {
    return symbol;
  }

  /** Place among the components of the mass balance; 0 is H+. */
  int component() {
    return component;
  }

  /** Name of the bare ion among the parameters. */
  String species() {
    return species;
  }

  /** Charge of the bare ion, in elementary charges. */
  public int charge() {
    return charge;
  }

  /** g/mol of the bare ion. */
  public double molarMass() {
    return molarMass;
  }
}
