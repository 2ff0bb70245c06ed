package feedwitness.store;

/** What came of opening a history file. */
public sealed interface LedgerOpening {

  /** Ready; the caller closes the ledger. */
  record Opened(H2Ledger ledger) implements LedgerOpening {}

  /**
   * Not opened, and nothing changed.
   *
   * @param message for people: which file, what is wrong, what to do
   */
  record Refused(Reason reason, String message) implements LedgerOpening {}

  /** Why a file is refused. */
  enum Reason {
    LOCKED,
    NEWER,
    NOT_WRITABLE,
    DAMAGED
  }
}
