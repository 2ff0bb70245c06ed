package feedwitness.app.table;

/** What comes first in a date that does not begin with its year. */
public enum DateOrder {
  /** 31/12/2026 */
  DAY_FIRST,
  /** 12/31/2026 */
  MONTH_FIRST
}
