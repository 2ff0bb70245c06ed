package feedwitness.check;

/** Which of the three looks a check takes at a probe. */
public enum Round {
  AS_FOUND("as found"),
  AFTER_CLEANING("after cleaning"),
  AS_LEFT("as left");

  private final String words;

  Round(String words) {
    this.words = words;
  }

  /** For people. */
  public String words() {
    return words;
  }
}
