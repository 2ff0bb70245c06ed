package feedwitness.simulate;

/**
 * What a probe hangs in.
 *
 * @param mineral the source water's minerals as the conductivity they bring at 25 °C, mS/cm
 * @param salt dissolved feed, g/L
 * @param celsius temperature, °C
 */
record Liquid(double mineral, double salt, double celsius) {}
