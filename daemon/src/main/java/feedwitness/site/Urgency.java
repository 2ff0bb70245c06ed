package feedwitness.site;

/** How much a message matters, least first. A note needs no answer; all others are alarms. */
public enum Urgency {
  NOTE,
  LOW,
  MEDIUM,
  HIGH;

  /** Whether this matters at least as much. */
  public boolean reaches(Urgency least) {
    return compareTo(least) >= 0;
  }
}
