package feedwitness.profile;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * Finds counted repeats of a group that may match nothing, such as {@code (?:a?|b?){40}}. At the
 * end of a line the library tries every combination of such nothings without looking at a single
 * character, so counting the characters looked at does not stop it. No field of a real line needs
 * one.
 */
final class EmptyRepeats {
  private final String regex;
  private final int flags;

  /** Where the groups open at the moment began. */
  private final Deque<Integer> open = new ArrayDeque<>();

  private EmptyRepeats(Pattern pattern) {
    this.regex = pattern.pattern();
    this.flags = pattern.flags();
  }

  /**
   * Checks a pattern.
   *
   * @throws IllegalArgumentException naming the group
   */
  static void check(Pattern pattern) {
    new EmptyRepeats(pattern).scan();
  }

  /** Inner groups end first, so a group that is tried holds no such repeat any more. */
  private void scan() {
    for (int i = 0; i < regex.length(); i++) {
      switch (regex.charAt(i)) {
        case '\\' -> i = afterEscape(i);
        case '[' -> i = endOfClass(i);
        case '(' -> open.push(i);
        case ')' -> {
          if (!open.isEmpty()) {
            close(open.pop(), i);
          }
        }
        default -> {}
      }
    }
  }

  private void close(int start, int end) {
    boolean counted = end + 1 < regex.length() && regex.charAt(end + 1) == '{';
    String group = regex.substring(start, end + 1);
    if (counted && mayBeNothing(group)) {
      throw new IllegalArgumentException(
          "the pattern repeats %s a number of times though it may match nothing, which can take for"
                  .formatted(group)
              + " ever; write it so that it matches at least one character");
    }
  }

  private boolean mayBeNothing(String group) {
    try {
      return Pattern.compile(group, flags).matcher("").matches();
    } catch (PatternSyntaxException e) {
      // It refers to another group and means nothing by itself.
      return false;
    }
  }

  private int afterEscape(int i) {
    if (regex.startsWith("\\Q", i)) {
      int end = regex.indexOf("\\E", i);
      return end < 0 ? regex.length() : end + 1;
    }
    return i + 1;
  }

  /** The last index of the character class that begins at {@code i}; classes may hold classes. */
  private int endOfClass(int i) {
    int depth = 0;
    for (int at = i; at < regex.length(); at++) {
      switch (regex.charAt(at)) {
        case '\\' -> at = afterEscape(at);
        case '[' -> depth++;
        case ']' -> depth--;
        default -> {}
      }
      if (depth == 0) {
        return at;
      }
    }
    return regex.length();
  }
}
