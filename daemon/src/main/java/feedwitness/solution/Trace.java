package feedwitness.solution;

import org.jspecify.annotations.Nullable;

/**
 * Trace elements, each counted as the main ion that conducts most like it. In a feed they carry
 * less than 0.2 % of the conductivity, so the approximation is far below everything else; it is not
 * meant for solutions of these salts alone.
 *
 * <p>Limiting conductivities at 25 °C in S cm²/eq (CRC Handbook): Fe2+ 54, Mn2+ 53.5, Zn2+ 52.8,
 * Cu2+ 53.6 against 53.0 for Mg2+; molybdate 74.5 against 80.0 for sulfate. A chelate is larger
 * than chloride and carries perhaps a third to a half as much; the surplus enters the uncertainty.
 */
public enum Trace {
  IRON("Fe2+", Ion.MG, 0.2),
  MANGANESE("Mn2+", Ion.MG, 0.1),
  ZINC("Zn2+", Ion.MG, 0.1),
  COPPER("Cu2+", Ion.MG, 0.1),
  /** Chelate of one negative charge, such as Fe(III)EDTA. */
  CHELATE_1("chelate of charge -1", Ion.CL, 0.6),
  /** Chelate of two negative charges, such as Mn, Zn or Cu EDTA. */
  CHELATE_2("chelate of charge -2", Ion.SO4, 0.6),
  MOLYBDATE("MoO4", Ion.SO4, 0.2),
  /** Boric acid: not an ion below pH 8.5; counts for nothing. */
  BORIC_ACID("B(OH)3", null, 0);

  private final String symbol;
  @Nullable private final Ion like;
  private final double doubt;

  Trace(String symbol, @Nullable Ion like, double doubt) {
    this.symbol = symbol;
    this.like = like;
    this.doubt = doubt;
  }

  /** The name in messages. */
  public String symbol() {
    return symbol;
  }

  /** The ion it is counted as; null where it is no ion. */
  @Nullable Ion like() {
    return like;
  }

  /** Relative standard uncertainty of its share of the conductivity. */
  double doubt() {
    return doubt;
  }
}
