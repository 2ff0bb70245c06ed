package feedwitness.engine;

/** What became of a batch. */
public sealed interface ImportOutcome {
  /**
   * Handed to the store, in order.
   *
   * @param taken readings that are new
   * @param known readings that were there already
   * @param retired readings of minutes of which only roll-ups are kept, because the time of their
   *     single readings was up: left out, or a second import would count them twice
   * @param boot of the last one taken; with {@code sequence} it can be compared with the durable
   *     mark
   * @param sequence 0 if none was taken
   */
  record Taken(int taken, int known, int retired, int boot, long sequence)
      implements ImportOutcome {}

  /** Nothing of the batch was taken. {@code message}: item, value, limit, remedy. */
  record Refused(String field, String message) implements ImportOutcome {}
}
