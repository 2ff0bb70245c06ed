package feedwitness.simulate;

/**
 * How a probe behaves.
 *
 * @param conductivitySeconds response time (63 %) of the cell, s
 * @param temperatureSeconds response time (63 %) of the temperature sensor, s
 * @param noise standard deviation of an indication, as a share of it
 * @param foulingPerDay sensitivity lost a day at 1.5 mS/cm, as a share
 * @param fouled share lost at the start
 * @param gain cell constant in use over the true one; 1 is right
 * @param conductivityStep resolution, mS/cm
 * @param celsiusStep resolution, K
 */
record ProbeSpec(
    double conductivitySeconds,
    double temperatureSeconds,
    double noise,
    double foulingPerDay,
    double fouled,
    double gain,
    double conductivityStep,
    double celsiusStep) {

  static ProbeSpec source(Parameters parameters) {
    double perDay = parameters.share(Parameter.SOURCE_FOULING);
    double noise = parameters.share(Parameter.PROBE_NOISE);
    return new ProbeSpec(5, 15, noise, perDay, perDay, 1, 1e-4, 0.01);
  }

  static ProbeSpec tank(Parameters parameters) {
    double perDay = parameters.share(Parameter.TANK_FOULING);
    double gain = 1 + parameters.share(Parameter.TANK_CELL_ERROR);
    double noise = parameters.share(Parameter.PROBE_NOISE);
    return new ProbeSpec(4, 25, noise, perDay, perDay, gain, 1e-3, 0.01);
  }

  static ProbeSpec line(Parameters parameters) {
    double perDay = parameters.share(Parameter.LINE_FOULING);
    double noise = parameters.share(Parameter.PROBE_NOISE);
    return new ProbeSpec(2, 12, noise, perDay, perDay, 1, 1e-3, 0.1);
  }
}
