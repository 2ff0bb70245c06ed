package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;

/**
 * Everything besides the sample that a measurement's numbers depend on. Kept with the samples, so
 * that any number can be made again and taken apart.
 *
 * @param rules version of the arithmetic, {@link #RULES} for new measurements
 * @param profile name of the device profile, or {@code typed} or {@code imported}
 * @param indicatedAt25 whether the instrument had already referred the indication to 25 °C
 * @param calibration curve in force
 * @param compensation what refers the calibrated value to 25 °C; not asked if {@code indicatedAt25}
 * @param limits of the instrument
 */
public record Basis(
    int rules,
    String profile,
    boolean indicatedAt25,
    CalibrationCurve calibration,
    TemperatureCompensation compensation,
    InstrumentLimits limits) {

  /**
   * Version of the arithmetic of this program. Rules 2 added to the uncertainty the calibration's
   * own, the scatter of the instrument, and an assumed accuracy of the temperature where the maker
   * states none. Numbers of older bases are still made by their own rules.
   */
  public static final int RULES = 2;

  /** Profile name of readings that were brought in from a file. */
  public static final String IMPORTED = "imported";

  /** Whether it is the basis of readings that were brought in from a file. */
  public boolean isImported() {
    return profile.equals(IMPORTED);
  }

  /** One line of {@code key=value} pairs from which {@link #parse} makes an equal basis. */
  public String toText() {
    return BasisText.write(this);
  }

  /**
   * Reads {@link #toText()}.
   *
   * @throws IllegalArgumentException if the text was written by a newer program or is damaged
   */
  public static Basis parse(String text) {
    return BasisText.read(text);
  }
}
