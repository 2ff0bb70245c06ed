package feedwitness.check;

/** What a check says of a tolerance. */
public enum Verdict {
  /** The error lies within the tolerance with all its uncertainty. */
  PASS("pass"),
  /** The error lies outside with all its uncertainty. */
  FAIL("fail"),
  /** The uncertainty straddles the limit. */
  CANT_TELL("can't tell");

  private final String words;

  Verdict(String words) {
    this.words = words;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /**
   * Decides with the whole expanded uncertainty on both sides (JCGM 106, 8.3.2 and 8.3.3).
   *
   * @param error signed, any unit
   * @param expanded uncertainty, same unit, ≥ 0; NaN gives can't tell
   * @param tolerance half-width, same unit
   */
  public static Verdict of(double error, double expanded, double tolerance) {
    double size = Math.abs(error);
    if (size + expanded <= tolerance) {
      return PASS;
    }
    return size - expanded > tolerance ? FAIL : CANT_TELL;
  }

  /** Of several: fail if one fails, pass if all pass. */
  public static Verdict together(Iterable<Verdict> verdicts) {
    boolean all = true;
    boolean any = false;
    for (Verdict verdict : verdicts) {
      if (verdict == FAIL) {
        return FAIL;
      }
      any = true;
      all &= verdict == PASS;
    }
    return any && all ? PASS : CANT_TELL;
  }
}
