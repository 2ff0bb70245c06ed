package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published tables, met within what is claimed beside the functions. */
class StandardsTest {

  /**
   * 0.01 mol/kg KCl, µS/cm: NIST values as printed in the CRC Handbook, "Standard KCl solutions for
   * calibrating conductivity cells" (Pure Appl. Chem. 73:1783, 2001).
   */
  @ParameterizedTest
  @CsvSource({
    "0, 772.92", "5, 890.96", "10, 1013.95", "15, 1141.45", "18, 1219.93", "20, 1273.03",
    "25, 1408.23", "30, 1546.63", "35, 1687.79", "40, 1831.27", "45, 1976.62", "50, 2123.43"
  })
  void potassiumChlorideFollowsNist(double celsius, double microSiemensPerCm) {
    assertEquals(
        microSiemensPerCm / 1408.23,
        KclStandard.ratio(celsius),
        1e-5 * microSiemensPerCm / 1408.23);
  }

  /** ISO 7888:1985, factor f25 as printed, an excerpt of the 198 values. */
  @ParameterizedTest
  @CsvSource({
    "0, 1.918",
    "0.1, 1.912",
    "0.2, 1.906",
    "5, 1.643",
    "10, 1.428",
    "15, 1.256",
    "20, 1.116",
    "25, 1.000",
    "30, 0.903",
    "35, 0.822"
  })
  void naturalWaterFollowsIso7888(double celsius, double f25) {
    assertEquals(f25, 1 / Iso7888.ratio(celsius), 0.001);
  }

  @ParameterizedTest
  @CsvSource({"2", "12.5", "25", "33"})
  void slopesAreTheDerivatives(double celsius) {
    double h = 1e-4;
    assertEquals(
        (KclStandard.ratio(celsius + h) - KclStandard.ratio(celsius - h)) / (2 * h),
        KclStandard.ratioPerKelvin(celsius),
        1e-8);
    assertEquals(
        (Iso7888.ratio(celsius + h) - Iso7888.ratio(celsius - h)) / (2 * h),
        Iso7888.ratioPerKelvin(celsius),
        1e-8);
  }
}
