package feedwitness.publish;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/** Numbers and times as written outside: rounded where no instrument has more, unknown is null. */
final class Numbers {
  private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

  /** Below a nanosiemens per centimetre there is only noise. */
  private static final int CONDUCTIVITY_DECIMALS = 6;

  private static final int TEMPERATURE_DECIMALS = 3;
  private static final DateTimeFormatter ISO_MILLIS =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

  private Numbers() {}

  /** Conductivity in mS/cm: six significant digits, none below 1 nS/cm; null if not finite. */
  static @Nullable BigDecimal conductivity(double milliSiemensPerCm) {
    return Double.isFinite(milliSiemensPerCm)
        ? plain(
            BigDecimal.valueOf(milliSiemensPerCm)
                .round(SIX_DIGITS)
                .setScale(CONDUCTIVITY_DECIMALS, RoundingMode.HALF_EVEN))
        : null;
  }

  /** Temperature in °C to a thousandth; null if not finite. */
  static @Nullable BigDecimal temperature(double celsius) {
    return Double.isFinite(celsius)
        ? plain(BigDecimal.valueOf(celsius).setScale(TEMPERATURE_DECIMALS, RoundingMode.HALF_EVEN))
        : null;
  }

  /** Seconds to a thousandth. */
  static BigDecimal seconds(Duration duration) {
    return plain(
        BigDecimal.valueOf(duration.getSeconds())
            .add(BigDecimal.valueOf(duration.getNano(), 9))
            .setScale(3, RoundingMode.HALF_EVEN));
  }

  /** ISO 8601 in UTC with milliseconds. */
  static String time(Instant instant) {
    return ISO_MILLIS.format(instant);
  }

  /** Without trailing zeros, and without an exponent when written. */
  private static BigDecimal plain(BigDecimal rounded) {
    BigDecimal stripped = rounded.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0, RoundingMode.UNNECESSARY) : stripped;
  }
}
