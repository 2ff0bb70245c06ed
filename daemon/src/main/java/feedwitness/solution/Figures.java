package feedwitness.solution;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as people write them. */
final class Figures {
  private static final MathContext SIX = new MathContext(6);

  private Figures() {}

  /** Six significant digits, without exponent or trailing zeros. */
  static String plain(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return "no number";
    }
    if (value != 0 && (Math.abs(value) < 1e-6 || Math.abs(value) >= 1e9)) {
      return String.valueOf(value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).round(SIX);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
