package feedwitness.store;

import feedwitness.ledger.DurableMark;
import feedwitness.measurement.Basis;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.tinylog.Logger;

/**
 * The one thread that writes. Takes what is pending, puts it into a hot row, commits, forces it to
 * disk, and only then publishes the mark; then seals what is complete. Never interrupted. A failure
 * of the database is told, and the same batch tried again on a fresh connection until it is on
 * disk.
 */
final class Writer implements Runnable {
  private static final long RETRY_NANOS = Duration.ofSeconds(1).toNanos();

  /** A disk that stays broken must not keep the service from stopping. */
  private static final int ATTEMPTS_WHEN_CLOSING = 5;

  /** Ten minutes of forced syncs: a megabyte of the file that waits to be used again. */
  private static final int SYNCS_UNTIDIED = 60;

  private final H2File file;
  private final Catalogue catalogue;
  private final Pending pending;
  private final Sealer sealer;
  private final Dating dating;
  private final Floor floor;
  private final Retention retention;
  private final TimeSource time;
  private final Duration syncEvery;
  private final Salvage salvage;
  private final EvidenceQueue evidence;
  private final OpenRuns openRuns = new OpenRuns();
  // written by the writer only, read by anyone
  private volatile DurableMark mark;
  private volatile Optional<String> trouble = Optional.empty();
  private Connection connection;
  private long nextRow = 1;
  private boolean dated;
  private int syncsUntidied;

  /** How far what is on disk goes at least. */
  private Optional<Top> safe = Optional.empty();

  private volatile boolean closedInOrder;

  Writer(
      H2File file,
      Connection connection,
      Catalogue catalogue,
      Pending pending,
      Sealer sealer,
      Dating dating,
      Floor floor,
      Retention retention,
      TimeSource time,
      Duration syncEvery,
      Salvage salvage,
      EvidenceQueue evidence,
      DurableMark start) {
    this.file = file;
    this.connection = connection;
    this.catalogue = catalogue;
    this.pending = pending;
    this.sealer = sealer;
    this.dating = dating;
    this.floor = floor;
    this.retention = retention;
    this.time = time;
    this.syncEvery = syncEvery;
    this.salvage = salvage;
    this.evidence = evidence;
    this.mark = start;
  }

  DurableMark mark() {
    return mark;
  }

  /** Whether the file was closed in order; known when the thread has ended. */
  boolean closedInOrder() {
    return closedInOrder;
  }

  Optional<String> trouble() {
    Optional<Pending.Lost> lost = pending.lost();
    return trouble.map(
        words ->
            lost.isEmpty()
                ? words
                : words + "; %d samples were not recorded so far".formatted(lost.get().samples()));
  }

  @Override
  public void run() {
    boolean last = false;
    // real time, not the injected clock: what a power cut takes is counted in real seconds
    long taken = System.nanoTime();
    while (!last) {
      Pending.Batch batch = pending.take(syncEvery.minusNanos(System.nanoTime() - taken));
      taken = System.nanoTime();
      last = batch.last();
      if (untilDone(() -> keep(batch.samples()))) {
        pending.onDisk(batch.ticket());
      } else {
        Logger.error(
            "history: {} samples could not be written before stopping", batch.samples().size());
      }
      sealIfDue();
      letGo();
    }
    evidence.close();
    shutDown();
  }

  /** Repeats an action on a fresh connection until it succeeds; false only when closing. */
  private boolean untilDone(Pending.Action action) {
    for (int attempt = 1; ; attempt++) {
      try {
        action.run();
        return true;
      } catch (Floor.Reached e) {
        stopped(String.valueOf(e.getMessage()));
        LockSupport.parkNanos(RETRY_NANOS);
        continue;
      } catch (SQLException | RuntimeException e) {
        tell(e);
      }
      if (pending.isClosed() && attempt >= ATTEMPTS_WHEN_CLOSING) {
        return false;
      }
      LockSupport.parkNanos(RETRY_NANOS);
      reconnect();
    }
  }

  private void stopped(String words) {
    if (trouble.isEmpty()) {
      Logger.error(words);
    }
    trouble = Optional.of(words);
    pending.halt();
  }

  /** All is well again: what was lost meanwhile goes on record. */
  private void goesOn() throws SQLException {
    if (trouble.isEmpty()) {
      return;
    }
    Optional<Pending.Lost> lost = pending.lost();
    if (lost.isPresent()) {
      try (PreparedStatement insert =
          connection.prepareStatement(
              "insert into not_recorded(boot, first_seq, last_seq, samples, why)"
                  + " values (?, ?, ?, ?, ?)")) {
        insert.setInt(1, lost.get().first().boot());
        insert.setLong(2, lost.get().first().sequence());
        insert.setLong(3, lost.get().last().sequence());
        insert.setLong(4, lost.get().samples());
        insert.setString(5, trouble.get());
        insert.executeUpdate();
      }
      connection.commit();
    }
    Logger.info(
        "history: recording again; {} samples were lost", lost.map(l -> l.samples()).orElse(0L));
    pending.resume();
    trouble = Optional.empty();
  }

  private void tell(Exception e) {
    String words =
        "history: %s cannot be written (%s); check free space and health of the disk; trying again"
            .formatted(file.path(), e.getMessage());
    if (trouble.isEmpty()) {
      Logger.debug(e, "history: what failed");
    }
    stopped(words);
  }

  /**
   * After a failure H2 may have closed the file and lost what was not forced: everything since is
   * written again.
   */
  private void reconnect() {
    H2File.abandon(connection);
    file.closeIdleReaders();
    try {
      reopen();
    } catch (SQLException e) {
      tell(e);
      if (Salvage.isDamage(e)) {
        salvageAndReopen();
      }
    } catch (RuntimeException e) {
      tell(e);
    }
  }

  private void reopen() throws SQLException {
    connection = file.openWriter();
    SelfCheck.run(connection, safe);
    catalogue.restate(connection);
    openRuns.demand();
  }

  private void salvageAndReopen() {
    H2File.abandon(connection);
    file.closeIdleReaders();
    try {
      salvage.run();
      // more than what is sound in the file there is not
      safe = Optional.empty();
      reopen();
    } catch (IOException | SQLException | RuntimeException e) {
      tell(e);
    }
  }

  private void keep(Waiting samples) throws SQLException {
    Optional<Stamp> youngest = samples.youngest();
    if (youngest.isEmpty() && evidence.isEmpty()) {
      return;
    }
    if (!pending.isClosed()) {
      // what is in memory when the service stops is little, and there is no later
      floor.check();
    }
    List<Run> runs = new ArrayList<>();
    List<Complete> complete = new ArrayList<>();
    sort(samples, runs, complete);
    long number = nextRow;
    if (!runs.isEmpty()) {
      for (byte[] row : HotRows.pack(runs)) {
        HotRows.put(connection, number++, row);
      }
    }
    // on all cores: this is most of the work, and no thread of it enters the database
    List<PackedChunk> chunks = complete.parallelStream().flatMap(this::pack).toList();
    Sealer.write(connection, chunks);
    List<Integer> datedBoots = dating.save(connection, time.wall().toEpochMilli());
    EvidenceQueue.Load records = evidence.load();
    records.write(connection, time.wall().toEpochMilli());
    pending.commitTaken(connection::commit);
    H2File.force(connection);
    records.onDisk();
    dating.saved(datedBoots);
    nextRow = number;
    safe = Top.of(runs).or(() -> safe);
    syncsUntidied++;
    openRuns.add(runs, System.nanoTime());
    if (youngest.isPresent()) {
      publish(youngest.get());
      dated = samples.lastDated();
    }
    goesOn();
  }

  /**
   * Splits a batch into runs of which more may come and those that are complete: where readings
   * come faster than real time, whole hours need not go through hot rows. The first run of a point
   * may go on with what is hot already, and the last may be gone on with.
   */
  private void sort(Waiting samples, List<Run> open, List<Complete> complete) throws SQLException {
    for (Map.Entry<PointName, Lane> entry : samples.lanes().entrySet()) {
      int point = catalogue.number(connection, entry.getKey());
      for (Basis basis : entry.getValue().bases()) {
        catalogue.number(connection, basis);
      }
      List<Piece> pieces = entry.getValue().pieces();
      int first = openRuns.has(point) ? 1 : 0;
      for (int i = 0; i < pieces.size(); i++) {
        if (i >= first && i < pieces.size() - 1) {
          complete.add(new Complete(point, pieces.get(i)));
        } else {
          open.add(pieces.get(i).run(point, catalogue));
        }
      }
    }
  }

  /** A piece of which no more will come, and the number of its point. */
  private record Complete(int point, Piece piece) {}

  private Stream<PackedChunk> pack(Complete complete) {
    return complete.piece().pack(complete.point(), catalogue).stream();
  }

  private void publish(Stamp youngest) {
    DurableMark before = mark;
    boolean further =
        youngest.boot() > before.boot()
            || (youngest.boot() == before.boot() && youngest.sequence() > before.sequence());
    mark =
        new DurableMark(
            further ? youngest.boot() : before.boot(),
            further ? youngest.sequence() : before.sequence(),
            time.wall());
  }

  /** Tried once a round: what cannot be sealed yet must not keep the next samples from the disk. */
  private void sealIfDue() {
    long now = System.nanoTime();
    if (!openRuns.due(now) && syncsUntidied < SYNCS_UNTIDIED) {
      return;
    }
    try {
      syncsUntidied = 0;
      if (!openRuns.due(now)) {
        file.free(connection);
        return;
      }
      openRuns.sealed(sealer.seal(connection, key -> openRuns.stillOpen(key, now)));
      file.tidy(connection);
      goesOn();
    } catch (SQLException | RuntimeException e) {
      tell(e);
      reconnect();
    }
  }

  private void letGo() {
    try {
      int gone = retention.step(connection, catalogue.numbers(), dating, dated);
      if (gone > 0) {
        Logger.debug("history: single samples of {} hours let go of", gone);
      }
    } catch (SQLException | RuntimeException e) {
      tell(e);
      reconnect();
    }
  }

  private void shutDown() {
    file.closeIdleReaders();
    try {
      H2File.shutDown(connection);
      closedInOrder = true;
    } catch (SQLException e) {
      Logger.warn(e, "history: {} was not closed in order", file.path());
    }
    H2File.closeQuietly(connection);
  }
}
