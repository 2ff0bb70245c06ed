package feedwitness.engine;

import feedwitness.check.CheckClosed;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckNoted;
import feedwitness.check.CheckStarted;
import feedwitness.check.ComparisonMade;
import feedwitness.check.CurveAdjusted;
import feedwitness.check.ProbeCleaned;
import feedwitness.check.ProbeOutOfPlace;
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

  /** Hands facts to the ledger in their order; the answer is complete when all are safe. */
  CompletableFuture<Void> keep(Stamp at, List<CheckEvidence> facts) {
    return CompletableFuture.allOf(
        facts.stream().map(fact -> keep(at, fact)).toArray(CompletableFuture<?>[]::new));
  }

  private CompletableFuture<Evidence> keep(Stamp at, CheckEvidence fact) {
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

  /** Waits until what was handed over is safe. */
  static void await(CompletableFuture<Void> kept) throws IOException {
    try {
      kept.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (ExecutionException e) {
      Throwable cause = e.getCause() == null ? e : e.getCause();
      throw new IOException(
          "done, but not on record, and lost with the next restart: " + cause.getMessage(), cause);
    } catch (TimeoutException e) {
      throw new IOException(
          "done, but not on disk after %d s; look at the check's record before you go on"
              .formatted(PATIENCE_SECONDS),
          e);
    }
  }
}
