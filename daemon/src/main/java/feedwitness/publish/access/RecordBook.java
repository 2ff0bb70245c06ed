package feedwitness.publish.access;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import java.util.concurrent.CompletableFuture;

/** Puts something on record with the moment of now; does not wait for the disk. */
@FunctionalInterface
public interface RecordBook {
  /** As {@link feedwitness.ledger.EvidenceLedger#append}. */
  CompletableFuture<Evidence> put(EvidenceDraft draft);
}
