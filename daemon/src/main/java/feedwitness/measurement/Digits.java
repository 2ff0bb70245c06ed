package feedwitness.measurement;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in sentences: rounded, without an exponent, unknown in words. */
final class Digits {
  private Digits() {}

  /** Up to six significant digits: more would be noise of binary floating point. */
  static String of(double number) {
    return of(number, 6);
  }

  static String of(double number, int significant) {
    if (!Double.isFinite(number)) {
      return "unknown";
    }
    BigDecimal rounded =
        new BigDecimal(number).round(new MathContext(significant)).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString().replace('-', '−');
  }
}
