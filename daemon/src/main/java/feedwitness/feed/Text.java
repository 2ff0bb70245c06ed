package feedwitness.feed;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers and words as printed. */
final class Text {
  private Text() {}

  /** Four significant digits at most, without needless zeros or exponents. */
  static String plain(double value) {
    return figures(value, 4);
  }

  static String figures(double value, int digits) {
    if (!Double.isFinite(value)) {
      return "unknown";
    }
    BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits));
    BigDecimal plain = rounded.stripTrailingZeros();
    return (plain.scale() < 0 ? plain.setScale(0) : plain).toPlainString();
  }

  /** Decimals as many as asked for. */
  static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** Whether two words differ by two letters or fewer, or one holds the other. */
  static boolean alike(String a, String b) {
    if (a.length() > 3 && b.length() > 3 && (a.contains(b) || b.contains(a))) {
      return true;
    }
    return distance(a.toLowerCase(Locale.ROOT), b.toLowerCase(Locale.ROOT)) <= 2
        && Math.min(a.length(), b.length()) > 3;
  }

  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int corner = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = corner + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        corner = row[j];
        row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
