package feedwitness.publish;

/** What a stranger sent, made fit for a message: one line, no control characters, not long. */
final class Quoted {
  private static final int LONGEST_QUOTE = 80;
  private static final int LONGEST_SENTENCE = 400;

  private Quoted() {}

  /** In single quotes. */
  static String of(String text) {
    return "'" + cut(text, LONGEST_QUOTE) + "'";
  }

  /** A sentence that may hold what a stranger sent. */
  static String plain(String text) {
    return cut(text, LONGEST_SENTENCE);
  }

  private static String cut(String text, int longest) {
    String visible = text.replaceAll("[\\p{Cntrl}\\p{Cs}\\u2028\\u2029]+", " ").strip();
    return visible.length() <= longest ? visible : visible.substring(0, longest) + "…";
  }
}
