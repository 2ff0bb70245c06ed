package feedwitness.store;

/**
 * What a stretch of one chunk held. Conductivities at 25 °C in mS/cm, over those samples that have
 * one; NaN if none has.
 *
 * @param startMillis of the stretch, aligned to its width since 1970 UTC
 * @param readings samples with a conductivity at 25 °C
 * @param missing samples without
 * @param temperatures samples with a temperature
 * @param flags bits of all flags of all samples; the worst quality follows from them
 */
record Rollup(
    long startMillis,
    int readings,
    int missing,
    double mean,
    double min,
    double max,
    int temperatures,
    double meanCelsius,
    long flags) {
  /** The same at another time. */
  Rollup at(long otherStart) {
    return new Rollup(
        otherStart, readings, missing, mean, min, max, temperatures, meanCelsius, flags);
  }
}
