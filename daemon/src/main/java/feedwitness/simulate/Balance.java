package feedwitness.simulate;

/**
 * What must add up, over the whole nursery since it began: {@code in = out + held}.
 *
 * @param waterIn litres, what was there at the start included
 * @param saltIn grams of feed, likewise
 * @param mineralIn conductivity-equivalents, mS/cm · L, likewise
 */
public record Balance(
    double waterIn,
    double waterOut,
    double waterHeld,
    double saltIn,
    double saltOut,
    double saltHeld,
    double mineralIn,
    double mineralOut,
    double mineralHeld) {}
