package feedwitness.feed;

/**
 * One thing in a form that cannot be used.
 *
 * @param field path in the form, such as {@code goal.strength} or {@code use[1].purity}
 * @param value as it was given; empty if it is missing
 * @param reason why it cannot be
 * @param remedy what to do
 */
public record Fault(String field, String value, String reason, String remedy) {
  /** In one line. */
  public String message() {
    String what = value.isEmpty() ? field : field + " '" + value + "'";
    return "%s: %s; %s".formatted(what, reason, remedy);
  }
}
