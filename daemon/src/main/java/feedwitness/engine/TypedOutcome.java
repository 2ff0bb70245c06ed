package feedwitness.engine;

import feedwitness.measurement.Measurement;

/** What became of a typed reading. */
public sealed interface TypedOutcome {
  record Accepted(Measurement measurement) implements TypedOutcome {}

  /**
   * Not accepted.
   *
   * @param field which input is at fault
   * @param message item, value, limit, unit and remedy
   */
  record Refused(String field, String message) implements TypedOutcome {}
}
