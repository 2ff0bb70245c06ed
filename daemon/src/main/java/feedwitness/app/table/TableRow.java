package feedwitness.app.table;

import feedwitness.quantity.ConductivityUnit;
import java.time.Instant;

/** What a line of a table is. */
public sealed interface TableRow {
  /** A reading, time as the table has it. {@code temperature}: NaN if there is none. */
  record Reading(
      long line, Instant time, double conductivity, ConductivityUnit unit, double temperature)
      implements TableRow {}

  /** The heading, once more: the logger was started anew. */
  record HeadingAgain() implements TableRow {}

  /** Nothing on it, or no conductivity where one is missing by intent. */
  record Empty() implements TableRow {}

  /** Of another measuring point. */
  record OtherPoint() implements TableRow {}

  /** It cannot be understood. {@code kind}: one of a few; {@code shown}: what stands there. */
  record Broken(String kind, String shown) implements TableRow {}
}
