package feedwitness.app;

import feedwitness.frame.FrameOutcome;
import feedwitness.sample.DecodeOutcome;
import feedwitness.sample.Reading;
import java.math.BigDecimal;
import java.math.MathContext;

/** Readings and rejections in words. */
final class ReadingWords {
  private ReadingWords() {}

  static String of(Reading reading) {
    return number(reading.conductivity())
        + " "
        + reading.conductivityUnit().symbol()
        + ", "
        + (Double.isNaN(reading.temperature())
            ? "no temperature"
            : number(reading.temperature()) + " " + reading.temperatureUnit().symbol());
  }

  static String of(DecodeOutcome outcome) {
    if (outcome instanceof DecodeOutcome.Decoded decoded) {
      return of(decoded.reading())
          + (decoded.remark().isEmpty() ? "" : " (" + decoded.remark() + ")");
    }
    if (outcome instanceof DecodeOutcome.Refused refused) {
      return refused.text();
    }
    return "ignored: " + ((DecodeOutcome.Ignored) outcome).text();
  }

  static String of(FrameOutcome.Rejection rejection) {
    return rejection.detail();
  }

  /** Up to six significant digits: more would be noise of binary floating point. */
  private static String number(double number) {
    if (Double.isNaN(number)) {
      return "no number";
    }
    return new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros().toPlainString();
  }
}
