package feedwitness.engine;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.tinylog.Logger;

/** Puts things on record, with or without waiting. For any thread. */
record Recorder(EvidenceLedger ledger) {
  private static final int PATIENCE_SECONDS = 10;

  /** Does not wait; what cannot be kept is logged. */
  void record(Stamp at, EvidenceDraft draft) {
    CompletableFuture<Evidence> unused =
        ledger
            .append(at, draft)
            .whenComplete(
                (evidence, failure) -> {
                  if (failure != null) {
                    Logger.warn(
                        "a record of {} is not kept: {}", draft.subject(), failure.getMessage());
                  }
                });
  }

  /** Waits until it is safe. */
  Evidence recordNow(Stamp at, EvidenceDraft draft) throws IOException {
    try {
      return ledger.append(at, draft).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (ExecutionException e) {
      Throwable cause = e.getCause() == null ? e : e.getCause();
      throw new IOException(String.valueOf(cause.getMessage()), cause);
    } catch (TimeoutException e) {
      throw new IOException(
          "it is not on disk after %d s; look at the journal before you write it again"
              .formatted(PATIENCE_SECONDS),
          e);
    }
  }
}
