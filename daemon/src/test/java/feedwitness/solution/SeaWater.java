package feedwitness.solution;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Sea water after the practical salinity scale of 1978 (UNESCO Technical Papers in Marine Science
 * 44), and its composition after Millero et al. 2008 (Deep-Sea Res. I 55:50), bromide and fluoride
 * counted as chloride, strontium as calcium, borate left out.
 */
final class SeaWater {
  static final String LABEL = "Sea water, salinity 2–40, 0–35 °C, not in the fit";

  private static final double[] A = {0.0080, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081};
  private static final double[] B = {0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144};
  private static final double[] C = {0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9};

  private SeaWater() {}

  static List<MeasuredPoint> points(ConductivityModel model) {
    List<MeasuredPoint> points = new ArrayList<>();
    for (double salinity : new double[] {2, 5, 10, 20, 30, 35, 40}) {
      for (double celsius : new double[] {0, 5, 10, 15, 20, 25, 30, 35}) {
        Composition sea = composition(salinity);
        Solution solution = Objects.requireNonNull(model.solution(sea, celsius, 8.1));
        points.add(
            new MeasuredPoint(
                "sea",
                "sea water",
                celsius,
                solution.dissolved.ionicStrength,
                conductivity(salinity, celsius),
                solution.conductivity,
                model.uncertainty(sea, solution)));
      }
    }
    return points;
  }

  /** mol/kg of water. */
  private static Composition composition(double salinity) {
    Map<Ion, Double> at35 = new EnumMap<>(Ion.class);
    at35.put(Ion.NA, 0.4860597);
    at35.put(Ion.MG, 0.0547421);
    at35.put(Ion.CA, 0.0106568 + 0.0000940);
    at35.put(Ion.K, 0.0105797);
    at35.put(Ion.CL, 0.5657647 + 0.0008728 + 0.0000708);
    at35.put(Ion.SO4, 0.0292643);
    at35.put(Ion.CO3, 0.0017803 + 0.0002477 + 0.0000100);
    double absolute = 35.16504 / 35;
    double dry = salinity * absolute / 1000;
    double dry35 = 35 * absolute / 1000;
    return Composition.of(at35).times(dry / (1 - dry) * (1 - dry35) / dry35);
  }

  /** mS/cm; the salinity formula turned round by bisection. */
  static double conductivity(double salinity, double celsius) {
    double low = 0;
    double high = 2;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (salinity(middle, celsius) < salinity) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 42.914 * low * polynomial(C, celsius);
  }

  private static double salinity(double ratio, double celsius) {
    double off = celsius - 15;
    double root = Math.sqrt(ratio);
    return polynomial(A, root) + off / (1 + 0.0162 * off) * polynomial(B, root);
  }

  private static double polynomial(double[] coefficients, double x) {
    double sum = 0;
    for (int i = coefficients.length - 1; i >= 0; i--) {
      sum = sum * x + coefficients[i];
    }
    return sum;
  }
}
