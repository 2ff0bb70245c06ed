package feedwitness.feed;

/**
 * Solubility of a salt, anhydrous, in pure water.
 *
 * @param at0 to {@code at40}: percent by mass of the saturated solution at 0, 10, 20, 30, 40 °C
 * @param source of the figures
 */
record Solubility(double at0, double at10, double at20, double at30, double at40, String source) {
  static final String CRC =
      "CRC Handbook of Chemistry and Physics, 98th ed., Aqueous Solubility of Inorganic Compounds";

  static Solubility crc(double at0, double at10, double at20, double at30, double at40) {
    return new Solubility(at0, at10, at20, at30, at40, CRC);
  }

  /**
   * Grams of the anhydrous salt that a kilogram of water holds; held at the ends of the table.
   *
   * @param celsius °C
   */
  double perKilogramOfWater(double celsius) {
    double[] table = {at0, at10, at20, at30, at40};
    double place = Math.max(0, Math.min(4, celsius / 10));
    int below = Math.min(3, (int) place);
    double low = ofWater(table[below]);
    return low + (place - below) * (ofWater(table[below + 1]) - low);
  }

  private static double ofWater(double massPercent) {
    return 1000 * massPercent / (100 - massPercent);
  }
}
