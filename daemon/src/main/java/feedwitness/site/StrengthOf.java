package feedwitness.site;

/** What a strength counts. */
public enum StrengthOf {
  /** All of it, source water included. */
  TOTAL,
  /** Only the part added by feed: total less source water. */
  ADDED
}
