package feedwitness.app;

/** Exit codes of the commands that move data. */
final class Exit {
  static final int DONE = 0;

  /** It could not be done; the reason is printed. */
  static final int FAILED = 1;

  /** Options or configuration cannot be used, or a question must be answered first. */
  static final int USAGE = 2;

  /** Done, but something was left out, and said. */
  static final int PARTLY = 3;

  private Exit() {}
}
