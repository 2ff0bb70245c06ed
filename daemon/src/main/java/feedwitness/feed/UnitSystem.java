package feedwitness.feed;

import java.util.Locale;

/** In which units amounts are shown beside grams and litres. */
enum UnitSystem {
  METRIC(1, "L"),
  US(3.785411784, "US gal"),
  IMPERIAL(4.54609, "imp gal");

  private static final double OUNCE = 28.349523;
  private static final double POUND = 453.59237;

  private final double litres;
  private final String volume;

  UnitSystem(double litres, String volume) {
    this.litres = litres;
    this.volume = volume;
  }

  /** A mass that is weighed out, rounded as the scale rounds. */
  String mass(double grams, double scale) {
    if (this == METRIC) {
      int decimals = scale >= 1 ? 0 : scale >= 0.1 ? 1 : scale >= 0.01 ? 2 : 3;
      return Text.fixed(grams, decimals) + " g";
    }
    if (grams >= POUND) {
      int pounds = (int) (grams / POUND);
      return String.format(Locale.ROOT, "%d lb %.1f oz", pounds, (grams - pounds * POUND) / OUNCE);
    }
    return Text.figures(grams / OUNCE, 3) + " oz";
  }

  /** A temperature. */
  String temperature(double celsius) {
    return this == US
        ? Text.figures(celsius * 1.8 + 32, 3) + " °F"
        : Text.figures(celsius, 3) + " °C";
  }

  /** A volume. */
  String volume(double litresOf) {
    if (this == METRIC && litresOf < 1) {
      return Text.figures(litresOf * 1000, 3) + " mL";
    }
    return Text.figures(litresOf / litres, 4) + " " + volume;
  }
}
