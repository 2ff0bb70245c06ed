package feedwitness.calibration;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in sentences: rounded, without an exponent. */
final class Figure {
  private Figure() {}

  static String of(double number, int significant) {
    if (!Double.isFinite(number)) {
      return "unknown";
    }
    BigDecimal rounded =
        new BigDecimal(number).round(new MathContext(significant)).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString().replace('-', '−');
  }
}
