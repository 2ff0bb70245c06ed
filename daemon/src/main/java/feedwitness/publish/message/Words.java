package feedwitness.publish.message;

/** Text from elsewhere, made fit for one line of a message, a header or a log. */
final class Words {
  private Words() {}

  /** One line of at most so many characters; nothing that could end a header. */
  static String line(String text, int longest) {
    String one = text.replaceAll("[\\p{Cntrl}\\p{Cs}\u0085\u2028\u2029]+", " ").strip();
    return one.length() <= longest ? one : one.substring(0, longest - 1) + "…";
  }
}
