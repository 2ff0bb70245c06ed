package feedwitness.ledger;

import feedwitness.quantity.Stamp;
import java.util.concurrent.CompletableFuture;

/**
 * Puts things on record: append-only, for ever. For any thread; nothing here waits for the disk.
 */
public interface EvidenceLedger {

  /**
   * Hands a record to the writer, which forces it to disk at once.
   *
   * @param at when; with the sequence of the last sample before
   * @return is completed when the record is safe; with a {@link java.io.IOException} in words for
   *     people when it can't be kept (recording is stopped and too many wait already, or the store
   *     closed)
   */
  CompletableFuture<Evidence> append(Stamp at, EvidenceDraft draft);

  /**
   * Keeps what a watcher knows, so that a restart goes on where it stopped. The last text under a
   * name counts; it is written with the next forced sync (together with all samples handed over
   * before), so at most that much is lost. Not evidence: it may be thrown away and learnt anew.
   *
   * @param name 1 to 64 characters
   * @param text at most 1 000 000 characters
   */
  void keepState(String name, String text);
}
