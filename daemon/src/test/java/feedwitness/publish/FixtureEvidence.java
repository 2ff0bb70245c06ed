package feedwitness.publish;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** Records in memory, asked as those on disk are. */
final class FixtureEvidence implements EvidenceLedger, EvidenceHistory {
  private final List<Evidence> records = new ArrayList<>();
  private final Map<Long, Attachment> attachments = new HashMap<>();
  private final Map<String, String> states = new HashMap<>();
  private final List<Runnable> waiting = new ArrayList<>();
  private boolean full;
  private boolean held;

  /** From now on records wait, as they do while recording is stopped. */
  synchronized void hold() {
    held = true;
  }

  /** What waited is written. */
  void release() {
    List<Runnable> all;
    synchronized (this) {
      held = false;
      all = List.copyOf(waiting);
      waiting.clear();
    }
    all.forEach(Runnable::run);
  }

  /** From now on nothing can be recorded. */
  synchronized void fill() {
    full = true;
  }

  /** There is room again. */
  synchronized void mend() {
    full = false;
  }

  @Override
  public synchronized CompletableFuture<Evidence> append(Stamp at, EvidenceDraft draft) {
    if (full) {
      return CompletableFuture.failedFuture(new IOException("the disk is full"));
    }
    if (held) {
      CompletableFuture<Evidence> later = new CompletableFuture<>();
      waiting.add(() -> later.complete(append(at, draft).join()));
      return later;
    }
    long id = records.size() + 1L;
    draft.attachment().ifPresent(attachment -> attachments.put(id, attachment));
    Evidence record =
        new Evidence(
            id,
            at,
            draft.kind(),
            draft.subject(),
            draft.author(),
            draft.fields(),
            draft.attachment().isPresent());
    records.add(record);
    return CompletableFuture.completedFuture(record);
  }

  @Override
  public synchronized void keepState(String name, String text) {
    states.put(name, text);
  }

  @Override
  public synchronized List<Evidence> evidence(EvidenceQuery query) {
    Comparator<Evidence> byId = Comparator.comparing(Evidence::id);
    return records.stream()
        .filter(r -> query.kinds().isEmpty() || query.kinds().contains(r.kind()))
        .filter(r -> query.subject().map(r.subject()::equals).orElse(true))
        .filter(r -> query.from().map(from -> !r.at().wall().isBefore(from)).orElse(true))
        .filter(r -> query.to().map(r.at().wall()::isBefore).orElse(true))
        .filter(r -> r.id() > query.afterId() && r.id() < query.beforeId())
        .sorted(query.order() == EvidenceQuery.Order.OLDEST_FIRST ? byId : byId.reversed())
        .limit(query.limit())
        .toList();
  }

  @Override
  public synchronized Optional<Evidence> evidence(long id) {
    return id >= 1 && id <= records.size()
        ? Optional.of(records.get((int) id - 1))
        : Optional.empty();
  }

  @Override
  public synchronized Optional<Attachment> attachment(long id) {
    return Optional.ofNullable(attachments.get(id));
  }

  @Override
  public synchronized Optional<String> state(String name) {
    return Optional.ofNullable(states.get(name));
  }
}
