package feedwitness.watch.diagnosis;

import java.util.List;

/**
 * Likely causes.
 *
 * @param causes likeliest first; empty where nothing is to be explained
 * @param ambiguous whether the first cannot be told from the second by what is known
 * @param tests what would decide, in the order in which to do them
 */
public record Diagnosis(List<Likely> causes, boolean ambiguous, List<String> tests) {
  /** Nothing to explain. */
  public static final Diagnosis NONE = new Diagnosis(List.of(), false, List.of());

  public Diagnosis {
    causes = List.copyOf(causes);
    tests = List.copyOf(tests);
  }

  /**
   * A cause and what speaks for it.
   *
   * @param why for people; may be empty
   */
  public record Likely(Cause cause, String why) {}

  /** One line for people. */
  public String words() {
    if (causes.isEmpty()) {
      return "";
    }
    Likely first = causes.get(0);
    if (ambiguous && causes.size() > 1) {
      return "can't tell: %s, or %s"
          .formatted(first.cause().words(), causes.get(1).cause().words());
    }
    String why = first.why().isEmpty() ? "" : " (" + first.why() + ")";
    return "likely " + first.cause().words() + why;
  }
}
