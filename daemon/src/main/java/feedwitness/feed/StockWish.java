package feedwitness.feed;

import java.util.List;

/**
 * Concentrate wanted.
 *
 * @param litres of it, of each stock where there are two
 * @param makes litres of feed from one litre of it
 * @param count of stocks, 1 or 2
 * @param coldestNight °C it must stay clear at
 * @param dial of a siphon mixer, if there is one
 */
record StockWish(double litres, double makes, int count, double coldestNight, Dial dial) {

  /**
   * Dial of a siphon mixer: what one litre of stock makes at each setting, as measured. Between two
   * settings the logarithm of the litres is taken as straight.
   */
  record Dial(List<Setting> settings) {
    static final Dial NONE = new Dial(List.of());

    Dial {
      settings = settings.stream().sorted((a, b) -> Double.compare(a.makes(), b.makes())).toList();
    }

    record Setting(double dial, double makes) {}

    /** Setting for a ratio; NaN beyond the settings known. */
    double settingFor(double makes) {
      for (int i = 1; i < settings.size(); i++) {
        Setting below = settings.get(i - 1);
        Setting above = settings.get(i);
        if (makes >= below.makes() && makes <= above.makes()) {
          double share = Math.log(makes / below.makes()) / Math.log(above.makes() / below.makes());
          return below.dial() + share * (above.dial() - below.dial());
        }
      }
      return Double.NaN;
    }

    /** Litres that one litre of stock makes at a setting; NaN beyond the settings known. */
    double makesAt(double dial) {
      for (int i = 1; i < settings.size(); i++) {
        Setting below = settings.get(i - 1);
        Setting above = settings.get(i);
        double share = (dial - below.dial()) / (above.dial() - below.dial());
        if (share >= 0 && share <= 1) {
          return below.makes() * Math.pow(above.makes() / below.makes(), share);
        }
      }
      return Double.NaN;
    }
  }
}
