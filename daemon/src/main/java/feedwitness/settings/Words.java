package feedwitness.settings;

import feedwitness.quantity.ConductivityUnit;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Help with words: lists of what would be right, and the nearest right one. */
final class Words {
  private Words() {}

  /** {@code a, b or c}. */
  static String or(Collection<String> words) {
    String all = String.join(", ", words);
    int comma = all.lastIndexOf(", ");
    return comma < 0 ? all : all.substring(0, comma) + " or " + all.substring(comma + 2);
  }

  static String conductivityUnits() {
    return Arrays.stream(ConductivityUnit.values())
        .map(ConductivityUnit::symbol)
        .collect(Collectors.joining(", "));
  }

  /** The known word that differs least, if it differs little enough to have been meant. */
  static Optional<String> nearest(String word, Collection<String> known) {
    String wanted = plain(word);
    return known.stream()
        .min(Comparator.comparingInt(k -> distance(wanted, plain(k))))
        .filter(k -> distance(wanted, plain(k)) <= Math.max(1, wanted.length() / 3));
  }

  private static String plain(String word) {
    String clipped = word.length() > 64 ? word.substring(0, 64) : word;
    return clipped.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
  }

  /** Edits, a swap of neighbours counted as one. */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1), d[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
