package feedwitness.sample;

/** What a flow or pump contact at an instrument said. The order is kept in the store. */
public enum Contact {
  /** The instrument has none, or said nothing of it. */
  NONE,
  /** No water flows. */
  OPEN,
  /** Water flows. */
  CLOSED
}
