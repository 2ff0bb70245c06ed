package feedwitness.quantity;

import java.util.Locale;
import java.util.Optional;

/**
 * Units in which instruments state electrical conductivity. Factors are exact by SI prefixes; CF is
 * the trade's conductivity factor, ten times mS/cm.
 */
public enum ConductivityUnit {
  MICROSIEMENS_PER_CM("µS/cm", 1e-3),
  MILLISIEMENS_PER_CM("mS/cm", 1),
  DECISIEMENS_PER_M("dS/m", 1),
  MILLISIEMENS_PER_M("mS/m", 1e-2),
  SIEMENS_PER_M("S/m", 10),
  CF("CF", 0.1);

  private final String symbol;
  private final double milliSiemensPerCm;

  ConductivityUnit(String symbol, double milliSiemensPerCm) {
    this.symbol = symbol;
    this.milliSiemensPerCm = milliSiemensPerCm;
  }

  /** As printed, for example {@code µS/cm}. */
  public String symbol() {
    return symbol;
  }

  /** The same conductivity in mS/cm; NaN stays NaN. */
  public double toMilliSiemensPerCm(double inThisUnit) {
    return inThisUnit * milliSiemensPerCm;
  }

  /** A conductivity given in mS/cm, in this unit. */
  public double fromMilliSiemensPerCm(double milliSiemensPerCm) {
    return milliSiemensPerCm / this.milliSiemensPerCm;
  }

  /** Reads a symbol as people type it: {@code uS/cm}, {@code µS/cm}, {@code mS/cm}, … */
  public static Optional<ConductivityUnit> parse(String text) {
    String plain = text.strip().replace('μ', 'u').replace('µ', 'u').replace(" ", "");
    for (ConductivityUnit unit : values()) {
      String own = unit.symbol.replace('µ', 'u');
      if (plain.equals(own)
          || (unit != MILLISIEMENS_PER_M
              && plain.toLowerCase(Locale.ROOT).equals(own.toLowerCase(Locale.ROOT)))) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }
}
