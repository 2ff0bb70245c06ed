package feedwitness.publish;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.publish.access.RecordBook;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;

/** What was put on record, in memory; every record at the moment the nursery's clock shows. */
final class FixtureBook implements RecordBook, EvidenceHistory {
  private final List<Evidence> records = new CopyOnWriteArrayList<>();
  private volatile boolean full;

  /** From now on nothing can be recorded. */
  void fill() {
    full = true;
  }

  @Override
  public synchronized CompletableFuture<Evidence> put(EvidenceDraft draft) {
    if (full) {
      return CompletableFuture.failedFuture(new IOException("the disk is full"));
    }
    Instant now = FixtureNursery.START;
    Evidence record =
        new Evidence(
            records.size() + 1L,
            new Stamp(1, 0, 0, now.toEpochMilli(), true),
            draft.kind(),
            draft.subject(),
            draft.author(),
            draft.fields(),
            false);
    records.add(record);
    return CompletableFuture.completedFuture(record);
  }

  List<Evidence> all(String kind) {
    return records.stream().filter(record -> record.kind().equals(kind)).toList();
  }

  @Override
  public List<Evidence> evidence(EvidenceQuery query) {
    return records.stream()
        .filter(record -> query.kinds().contains(record.kind()))
        .filter(record -> record.id() > query.afterId())
        .limit(query.limit())
        .toList();
  }

  @Override
  public Optional<Evidence> evidence(long id) {
    return records.stream().filter(record -> record.id() == id).findFirst();
  }

  @Override
  public Optional<Attachment> attachment(long id) {
    return Optional.empty();
  }

  @Override
  public Optional<String> state(String name) {
    return Optional.empty();
  }
}
