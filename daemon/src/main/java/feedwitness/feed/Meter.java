package feedwitness.feed;

/**
 * The meter at hand.
 *
 * @param unit it shows
 * @param compensates whether it refers to 25 °C by itself
 * @param percentPerKelvin its coefficient, %/K; 2 is the habit of the trade
 */
record Meter(SaltsUnit unit, boolean compensates, double percentPerKelvin) {
  static final Meter USUAL = new Meter(SaltsUnit.MILLISIEMENS, true, 2);

  /**
   * What it shows, mS/cm.
   *
   * @param raw mS/cm at {@code celsius}
   */
  double shown(double raw, double celsius) {
    return compensates ? raw / (1 + percentPerKelvin / 100 * (celsius - Foresight.REFERENCE)) : raw;
  }
}
