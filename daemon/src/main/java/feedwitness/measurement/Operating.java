package feedwitness.measurement;

/**
 * Where on its formulas a measurement stands: what the sensitivities are taken at.
 *
 * @param indicated mS/cm
 * @param celsius NaN if none
 * @param factor compensation factor, unitless
 * @param perKelvin its slope, 1/K
 */
record Operating(double indicated, double celsius, double factor, double perKelvin, Basis basis) {

  double calibrated() {
    return basis.calibration().apply(indicated);
  }

  double at25() {
    return calibrated() * factor;
  }

  /** d(at 25 °C)/d(indicated), unitless. */
  double perIndicated() {
    return factor * basis.calibration().slope();
  }

  InstrumentLimits limits() {
    return basis.limits();
  }
}
