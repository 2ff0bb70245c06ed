package feedwitness.check;

/**
 * What a thermometer beside the probe in the beaker says.
 *
 * @param celsius °C, −5 to 60
 * @param accuracyKelvin half-width, K, above 0 to 5; NaN if unknown, then ± 0.5 K is assumed
 */
public record Thermometer(double celsius, double accuracyKelvin) {
  private static final double ASSUMED_KELVIN = 0.5;

  /** Whether both can be. */
  boolean makesSense() {
    boolean accuracy = Double.isNaN(accuracyKelvin) || (accuracyKelvin > 0 && accuracyKelvin <= 5);
    return celsius >= -5 && celsius <= 60 && accuracy;
  }

  /** {@code 21.3 ± 0.1 °C}. */
  String words() {
    return assumed()
        ? Say.number(celsius, 4) + " °C"
        : "%s ± %s °C".formatted(Say.number(celsius, 4), Say.number(accuracyKelvin, 2));
  }

  boolean assumed() {
    return Double.isNaN(accuracyKelvin);
  }

  /** Standard uncertainty, K. */
  public double standardKelvin() {
    return (assumed() ? ASSUMED_KELVIN : accuracyKelvin) / Math.sqrt(3);
  }
}
