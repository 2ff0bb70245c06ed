package feedwitness.alarm;

/** How soon somebody must answer; the more urgent comes later. */
public enum Priority {
  /** Worth knowing; nobody need answer. */
  NOTICE,
  /** Answer today. */
  LOW,
  /** Answer within the hour. */
  MEDIUM,
  /** Answer at once: plants may take harm. */
  HIGH;

  /** An alarm needs an answer, a notice does not. */
  public boolean needsAnswer() {
    return this != NOTICE;
  }
}
