package feedwitness.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Numbers and times in sentences: rounded, without an exponent, unknown in words. */
final class Say {
  /** Longer numbers are somebody's slip and no help in a sentence. */
  private static final double ENDLESS = 1e7;

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

  private Say() {}

  static String number(double number, int significant) {
    if (!Double.isFinite(number)) {
      return "unknown";
    }
    if (Math.abs(number) >= ENDLESS) {
      return number < 0 ? "less than −10 million" : "more than 10 million";
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

  /** {@code 12 May 14:05}, as the clock on the wall there says. */
  static String moment(Instant at, ZoneId zone) {
    return MOMENT.format(at.atZone(zone));
  }

  /** {@code 12 May 2026}. */
  static String day(Instant at, ZoneId zone) {
    return DAY.format(at.atZone(zone));
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
