package feedwitness.sample;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Matches a whole text within a budget of steps. A profile is written by its user, and a pattern
 * such as {@code (\d+)+,} takes longer than the life of the plants on an unlucky line; the wire's
 * thread must not hang on it. A step is one character looked at.
 */
final class BoundedMatch {
  /** Some 5 ms on a small board; an ordinary pattern takes a few hundred steps. */
  static final int STEPS = 1_000_000;

  private BoundedMatch() {}

  /**
   * Matches the pattern against the whole text.
   *
   * @return the match; empty if the pattern does not fit
   * @throws TooHardException if the budget did not suffice
   */
  static Optional<Matcher> of(Pattern pattern, String text) throws TooHardException {
    Matcher matcher = pattern.matcher(new CountedText(text));
    try {
      return matcher.matches() ? Optional.of(matcher) : Optional.empty();
    } catch (OutOfSteps | StackOverflowError e) {
      // The library matches by recursion: a long line can exhaust the stack before the budget.
      throw new TooHardException();
    }
  }

  /** The pattern takes too long on this text. */
  static final class TooHardException extends Exception {
    TooHardException() {
      super("too many steps", null, false, false);
    }
  }

  /** Carries the end of the budget out through the regular-expression library. */
  private static final class OutOfSteps extends RuntimeException {
    OutOfSteps() {
      super("out of steps", null, false, false);
    }
  }

  private static final class CountedText implements CharSequence {
    private final String text;
    private int left = STEPS;

    CountedText(String text) {
      this.text = text;
    }

    @Override
    public char charAt(int index) {
      if (--left < 0) {
        throw new OutOfSteps();
      }
      return text.charAt(index);
    }

    @Override
    public int length() {
      return text.length();
    }

    @Override
    public CharSequence subSequence(int start, int end) {
      return text.substring(start, end);
    }

    @Override
    public String toString() {
      return text;
    }
  }
}
