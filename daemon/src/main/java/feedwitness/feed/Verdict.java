package feedwitness.feed;

/** How sure a difference is, in plain words. */
final class Verdict {
  private static final double LIKELY = 2;
  private static final double SURE = 3;

  private Verdict() {}

  /**
   * A sentence's beginning.
   *
   * @param ratio found against expected
   * @param doubt relative standard uncertainty of it
   * @param more said where the ratio is above 1
   * @param less said where it is below
   */
  static String of(double ratio, double doubt, String more, String less) {
    double off = Math.abs(ratio - 1);
    String way = ratio > 1 ? more : less;
    String percent = Text.fixed(100 * off, 0) + " %";
    String within = " (± %s %%)".formatted(Text.fixed(200 * doubt, 0));
    if (off <= doubt) {
      return "as it should be" + within;
    }
    if (off < LIKELY * doubt) {
      return "can't tell: " + percent + " " + way + within;
    }
    return (off < SURE * doubt ? "likely " : "sure: ") + percent + " " + way + within;
  }
}
