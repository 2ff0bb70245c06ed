package feedwitness.frame;

import feedwitness.quantity.Octets;

/**
 * Which octets may stand in a text line, and what they mean: TAB, printable ASCII, and the degree
 * and micro signs, either as one octet (ISO 8859-1) or in UTF-8. Nothing else: at a wrong baud rate
 * or parity almost every line holds something else, and is rejected before anybody reads a number
 * out of it.
 */
public final class LineText {
  private static final int TAB = 0x09;
  private static final int DEGREE = 0xB0;
  private static final int MICRO = 0xB5;
  private static final int UTF8_LATIN = 0xC2;
  private static final int UTF8_GREEK = 0xCE;
  private static final int GREEK_MU = 0xBC;

  private LineText() {}

  /** The line as text, with {@code °} and {@code µ} however they were sent. */
  public static String of(Octets line) {
    StringBuilder text = new StringBuilder(line.length());
    for (int i = 0; i < line.length(); i++) {
      int pair = pairAt(line, i);
      text.append((char) (pair != 0 ? pair : line.at(i)));
      i += pair != 0 ? 1 : 0;
    }
    return text.toString();
  }

  /** Index of the first octet that cannot stand in a line; −1 if there is none. */
  static int firstStranger(Octets line) {
    for (int i = 0; i < line.length(); i++) {
      int octet = line.at(i);
      if (pairAt(line, i) != 0) {
        i++;
      } else if (!(octet == TAB
          || (octet >= 0x20 && octet < 0x7f)
          || octet == DEGREE
          || octet == MICRO)) {
        return i;
      }
    }
    return -1;
  }

  /** The sign a UTF-8 pair at {@code i} stands for; 0 if there is no such pair. */
  private static int pairAt(Octets line, int i) {
    if (i + 1 >= line.length()) {
      return 0;
    }
    int first = line.at(i);
    int second = line.at(i + 1);
    if (first == UTF8_LATIN && (second == DEGREE || second == MICRO)) {
      return second;
    }
    return first == UTF8_GREEK && second == GREEK_MU ? MICRO : 0;
  }
}
