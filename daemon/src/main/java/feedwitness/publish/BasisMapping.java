package feedwitness.publish;

import feedwitness.measurement.Basis;
import feedwitness.measurement.BasisWords;

/** What made a number, in words. */
final class BasisMapping {
  private BasisMapping() {}

  static PointJson.BasisJson map(Basis basis) {
    return new PointJson.BasisJson(
        basis.profile(),
        BasisWords.compensation(basis),
        BasisWords.calibration(basis.calibration()));
  }
}
