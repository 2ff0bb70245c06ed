package feedwitness.simulate;

import feedwitness.simulate.Deed.Target;
import java.time.Duration;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Reads one deed: {@code [+DURATION] [TARGET] KIND [AMOUNT]}, the duration anywhere. */
final class DeedReader {
  private static final Duration LONGEST = Duration.ofDays(60);

  private DeedReader() {}

  /**
   * @throws IllegalArgumentException saying what is wrong and what to write instead
   */
  static Deed read(Deque<String> words) {
    Duration duration = takeDuration(words);
    Target target = takeTarget(words);
    String which = words.isEmpty() ? "" : words.remove();
    DeedKind kind =
        DeedKind.named(which)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "'%s' is nothing that can happen; use one of %s"
                            .formatted(which, DeedKind.names())));
    checkTarget(kind, target);
    boolean lasts = kind.lasting() == DeedKind.Lasting.YES;
    if (lasts == duration.isZero()) {
      throw new IllegalArgumentException(
          lasts
              ? "%s needs a duration; add for example +30m".formatted(which)
              : "%s is done at once; leave the duration out".formatted(which));
    }
    return new Deed(kind, target, amount(kind, String.join("", words)), duration);
  }

  private static Duration takeDuration(Deque<String> words) {
    for (Iterator<String> it = words.iterator(); it.hasNext(); ) {
      String word = it.next();
      if (word.startsWith("+")) {
        it.remove();
        return duration(word);
      }
    }
    return Duration.ZERO;
  }

  private static Target takeTarget(Deque<String> words) {
    Optional<Target> target =
        Arrays.stream(Target.values())
            .filter(t -> t != Target.NURSERY && t.text().equals(words.peek()))
            .findFirst();
    if (target.isPresent()) {
      words.remove();
    }
    return target.orElse(Target.NURSERY);
  }

  private static void checkTarget(DeedKind kind, Target target) {
    if (kind.targets().contains(target)) {
      return;
    }
    if (kind.hitsTheNursery()) {
      throw new IllegalArgumentException(
          "%s happens to the nursery; leave '%s' out".formatted(kind.text(), target.text()));
    }
    String possible = kind.targets().stream().map(Target::text).collect(Collectors.joining(", "));
    throw new IllegalArgumentException(
        "%s cannot happen to %s; write one of %s before it"
            .formatted(
                kind.text(), target == Target.NURSERY ? "nothing" : target.text(), possible));
  }

  private static double amount(DeedKind kind, String word) {
    if (word.isEmpty()) {
      return kind.usual();
    }
    if (kind.unit().isEmpty()) {
      throw new IllegalArgumentException(
          "%s takes no amount; leave '%s' out".formatted(kind.text(), word));
    }
    String digits = word.replace("°", "");
    if (!digits.endsWith(kind.unit())) {
      throw new IllegalArgumentException(
          "%s '%s' has no unit %s; write for example %s%s"
              .formatted(kind.text(), word, kind.unit(), kind.usual(), kind.unit()));
    }
    digits = digits.substring(0, digits.length() - kind.unit().length());
    double value = number(digits, kind.text());
    if (!kind.accepts(value)) {
      throw new IllegalArgumentException(
          "%s %s is outside %s; choose a number within".formatted(kind.text(), word, kind.range()));
    }
    return value;
  }

  /** A decimal number with a point. */
  static double number(String word, String item) {
    if (!word.matches("[-+]?[0-9]{1,9}(\\.[0-9]{1,9})?")) {
      throw new IllegalArgumentException(
          "%s '%s' is not a number; write it as 12 or 0.46".formatted(item, word));
    }
    return Double.parseDouble(word);
  }

  /** {@code +90s}, {@code +5m}, {@code +4h} or {@code +2d}; more than 0, at most 60 days. */
  static Duration duration(String word) {
    if (word.matches("\\+[0-9]{1,7}[smhd]")) {
      long count = Long.parseLong(word.substring(1, word.length() - 1));
      String iso =
          switch (word.charAt(word.length() - 1)) {
            case 'd' -> "P" + count + "D";
            default -> "PT" + count + word.substring(word.length() - 1).toUpperCase(Locale.ROOT);
          };
      Duration duration = Duration.parse(iso);
      if (!duration.isZero() && duration.compareTo(LONGEST) <= 0) {
        return duration;
      }
    }
    throw new IllegalArgumentException(
        "'%s' is not a duration above 0 and at most 60 days; write +90s, +5m, +4h or +2d"
            .formatted(word));
  }
}
