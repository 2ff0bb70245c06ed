package feedwitness.watch.drift;

/**
 * What the line said in one irrigation event, or in an hour of water that never rests.
 *
 * @param seconds when water began to flow
 * @param wallMillis the same on the wall clock, ms since 1970
 * @param conductivity25 robust mean once it had settled, mS/cm at 25 °C
 * @param uncertainty standard uncertainty of a reading, mS/cm; NaN if unknown
 * @param celsius mean temperature, °C; NaN if unknown
 * @param readings that went into the mean
 * @param airy readings as if in air
 */
record LineEvent(
    double seconds,
    long wallMillis,
    double conductivity25,
    double uncertainty,
    double celsius,
    int readings,
    int airy) {}
