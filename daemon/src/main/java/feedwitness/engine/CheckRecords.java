package feedwitness.engine;

import feedwitness.check.CheckClosed;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckNoted;
import feedwitness.check.CheckStarted;
import feedwitness.check.ComparisonMade;
import feedwitness.check.CurveAdjusted;
import feedwitness.check.ProbeCleaned;
import feedwitness.check.ProbeOutOfPlace;
import feedwitness.check.ProbeReplaced;
import feedwitness.check.ProbeReturned;
import feedwitness.check.RangeQualified;
import feedwitness.check.StandardMeasured;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.CheckAfterthoughts;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.tinylog.Logger;

/** Facts of checks as records, and back again after a restart. For any thread. */
final class CheckRecords {
  private static final int PAGE = 1_000;
  private static final int PATIENCE_SECONDS = 10;
  private static final String[] KINDS = {
    CheckStarted.KIND,
    StandardMeasured.KIND,
    ProbeCleaned.KIND,
    CurveAdjusted.KIND,
    CheckClosed.KIND,
    CheckNoted.KIND,
    ProbeReturned.KIND,
    ProbeReplaced.KIND,
    ProbeOutOfPlace.KIND,
    ComparisonMade.KIND,
    RangeQualified.KIND
  };

  private final EvidenceLedger ledger;
  private final Afterthoughts later;

  /** {@code later} learns what a record says of earlier readings as soon as it is kept. */
  CheckRecords(EvidenceLedger ledger, Afterthoughts later) {
    this.ledger = ledger;
    this.later = later;
  }

  /** All that was kept, in its order; what a newer program wrote is left out. */
  static List<CheckEvidence> read(EvidenceHistory history) {
    List<CheckEvidence> all = new ArrayList<>();
    long after = 0;
    while (true) {
      List<Evidence> records = history.evidence(EvidenceQuery.after(after, PAGE, KINDS));
      for (Evidence record : records) {
        after = record.id();
        try {
          CheckEvidence.read(record.kind(), record.fields()).ifPresent(all::add);
        } catch (IllegalArgumentException e) {
          Logger.warn("check record {} is left out: {}", record.key(), e.getMessage());
        }
      }
      if (records.size() < PAGE) {
        return all;
      }
    }
  }

  /** Hands a fact to the ledger; the answer is complete when it is safe. */
  CompletableFuture<Evidence> keep(Stamp at, CheckEvidence fact) {
    EvidenceDraft draft =
        EvidenceDraft.of(fact.kind(), fact.subject().toText(), fact.toFields()).by(fact.author());
    return ledger
        .append(at, draft)
        .whenComplete(
            (kept, failure) -> {
              if (kept != null) {
                CheckAfterthoughts.of(kept).ifPresent(later::add);
              } else {
                Logger.warn("not recorded: {} of {}: {}", fact.kind(), fact.subject(), failure);
              }
            });
  }

  /** Of what is still on its way after a while. */
  static final String NOT_YET =
      "what was done last is not on disk yet and does not count before; look whether the disk is full";

  /** Of what could not be recorded. */
  static String notDone(Throwable failure) {
    Throwable cause = failure;
    while ((cause instanceof CompletionException || cause instanceof ExecutionException)
        && cause.getCause() != null) {
      cause = cause.getCause();
    }
    return "what was done last could not be recorded, so it does not count; do it again: %s"
        .formatted(cause.getMessage());
  }

  /** Waits until what was handed over is safe. */
  static void await(CompletableFuture<Void> kept) throws IOException {
    await(kept, NOT_YET);
  }

  /** Waits until what was done before is safe, so that the next step stands on it. */
  static void awaitEarlier(CompletableFuture<Void> kept) throws IOException {
    await(kept, "not done: " + NOT_YET);
  }

  private static void await(CompletableFuture<Void> kept, String late) throws IOException {
    try {
      kept.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (ExecutionException e) {
      throw new IOException(notDone(e), e);
    } catch (TimeoutException e) {
      throw new IOException(late, e);
    }
  }
}
