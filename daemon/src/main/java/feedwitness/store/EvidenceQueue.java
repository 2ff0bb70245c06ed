package feedwitness.store;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;

/**
 * Records and states on their way to the file. While recording is stopped they wait here; beyond
 * {@link #MOST_WAITING} records the next are refused. For any thread.
 */
final class EvidenceQueue {
  /** Alarms and notes of a day without a disk. */
  static final int MOST_WAITING = 2_000;

  private final Runnable wake;
  private final List<Waiting> waiting = new ArrayList<>();
  private final Map<String, String> states = new TreeMap<>();
  private final Map<String, String> written = new TreeMap<>();
  private long lastId;
  private boolean closed;

  /**
   * @param lastId highest id in the file
   * @param wake calls the writer at once
   */
  EvidenceQueue(long lastId, Runnable wake) {
    this.lastId = lastId;
    this.wake = wake;
  }

  private record Waiting(
      Evidence evidence, Optional<Attachment> attachment, CompletableFuture<Evidence> done) {}

  CompletableFuture<Evidence> add(Stamp at, EvidenceDraft draft) {
    CompletableFuture<Evidence> done = new CompletableFuture<>();
    synchronized (this) {
      if (closed || waiting.size() >= MOST_WAITING) {
        String why =
            closed
                ? "the service is stopping; try again when it runs"
                : "%d records wait for the disk already; mend the disk, then try again"
                    .formatted(waiting.size());
        done.completeExceptionally(new IOException(why));
        return done;
      }
      waiting.add(new Waiting(EvidenceCodec.of(++lastId, at, draft), draft.attachment(), done));
    }
    wake.run();
    return done;
  }

  /** Kept with the next forced sync, unless it is what was kept before. */
  synchronized void keep(String name, String text) {
    if (text.equals(written.get(name))) {
      states.remove(name);
    } else {
      states.put(name, text);
    }
  }

  synchronized boolean isEmpty() {
    return waiting.isEmpty() && states.isEmpty();
  }

  /** What there is to write now; it stays here until it is {@link Load#onDisk on disk}. */
  synchronized Load load() {
    return new Load(List.copyOf(waiting), Map.copyOf(states));
  }

  /** Nothing more is taken; who still waits is told. */
  void close() {
    List<Waiting> left;
    synchronized (this) {
      closed = true;
      left = List.copyOf(waiting);
      waiting.clear();
    }
    left.forEach(
        each ->
            each.done()
                .completeExceptionally(
                    new IOException("the service stopped before this could be written")));
  }

  private void done(Load load) {
    synchronized (this) {
      waiting.removeAll(load.records);
      load.states.forEach(
          (name, text) -> {
            written.put(name, text);
            states.remove(name, text);
          });
    }
    load.records.forEach(each -> each.done().complete(each.evidence()));
  }

  /** What one sync writes. */
  final class Load {
    private final List<Waiting> records;
    private final Map<String, String> states;

    private Load(List<Waiting> records, Map<String, String> states) {
      this.records = records;
      this.states = states;
    }

    /** Leaves the commit to the caller. May be done again after a failure. */
    void write(Connection connection, long nowMillis) throws SQLException {
      for (Waiting each : records) {
        EvidenceRows.put(connection, each.evidence());
        if (each.attachment().isPresent()) {
          EvidenceRows.putPicture(
              connection, new EvidenceCodec.Picture(each.evidence().id(), each.attachment().get()));
        }
      }
      for (Map.Entry<String, String> state : states.entrySet()) {
        EvidenceRows.putState(connection, state.getKey(), state.getValue(), nowMillis);
      }
    }

    void onDisk() {
      done(this);
    }
  }
}
