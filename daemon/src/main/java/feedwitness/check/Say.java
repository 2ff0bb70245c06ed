package feedwitness.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers in sentences: rounded, without an exponent, unknown in words. */
final class Say {
  private Say() {}

  static String number(double number, int significant) {
    if (!Double.isFinite(number)) {
      return "unknown";
    }
    BigDecimal rounded =
        new BigDecimal(number).round(new MathContext(significant)).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString().replace('-', '−');
  }

  /** {@code 2.77 mS/cm}. */
  static String conductivity(double milliSiemensPerCm) {
    return number(milliSiemensPerCm, 4) + " mS/cm";
  }

  /** One decimal, {@code 21.3 °C}. */
  static String celsius(double celsius) {
    return fixed(celsius, 1) + " °C";
  }

  /** One decimal without a sign, for what is never negative. */
  static String percent(double percent) {
    return fixed(percent, 1) + " %";
  }

  /** {@code 4.6 % low}, {@code 0.3 % high}, {@code no error to be seen}. */
  static String error(double percent) {
    String size = fixed(Math.abs(percent), 1);
    if (size.equals("0.0")) {
      return "within 0.05 %";
    }
    return size + (percent < 0 ? " % low" : " % high");
  }

  static String fixed(double number, int decimals) {
    return Double.isFinite(number)
        ? new BigDecimal(number)
            .setScale(decimals, RoundingMode.HALF_UP)
            .toPlainString()
            .replace('-', '−')
        : "unknown";
  }
}
