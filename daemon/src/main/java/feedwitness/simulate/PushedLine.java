package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.util.Locale;

/** The source probe's language: {@code 351.2,12.41} and a line end. */
final class PushedLine {
  private PushedLine() {}

  /**
   * One line.
   *
   * @param conductivity raw, mS/cm; written in µS/cm with one decimal
   * @param celsius written with two decimals
   */
  static Octets of(double conductivity, double celsius) {
    return Octets.ofText(String.format(Locale.ROOT, "%.1f,%.2f\r\n", conductivity * 1000, celsius));
  }
}
