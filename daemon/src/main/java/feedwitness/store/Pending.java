package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Samples on their way to the file: the bounded queue between the engine and the writer. When it is
 * full, {@link #add} waits until the writer has taken some: the engine slows down, the queues of
 * the wires take up what arrives. Only while recording is halted, what does not fit is counted and
 * let go of, so that live values go on. What the writer has taken stays visible to readers until it
 * is committed.
 */
final class Pending {
  private final int capacity;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private Waiting open = new Waiting();
  private Waiting taken = new Waiting();
  private long asked;
  private long synced;
  private boolean closed;
  private boolean halted;
  private @Nullable Stamp firstLost;
  private @Nullable Stamp lastLost;
  private long lost;

  Pending(int capacity) {
    this.capacity = capacity;
  }

  /** Something done under the lock that may fail in the database. */
  interface Action {
    void run() throws SQLException;
  }

  void add(Measurement measurement) {
    lock.lock();
    try {
      while (open.size() >= capacity && !closed && !halted) {
        changed.awaitUninterruptibly();
      }
      if (closed) {
        throw new IllegalStateException("the store is closed, nothing more can be kept");
      }
      if (open.size() >= capacity) {
        lose(measurement.stamp());
        return;
      }
      open.add(measurement);
      // the writer need not wake for every sample
      if (open.size() == (capacity + 1) / 2) {
        changed.signalAll();
      }
    } finally {
      lock.unlock();
    }
  }

  private void lose(Stamp stamp) {
    firstLost = firstLost == null ? stamp : firstLost;
    lastLost = stamp;
    lost++;
  }

  /**
   * Samples that could not be kept.
   *
   * @param samples how many, all between first and last
   */
  record Lost(Stamp first, Stamp last, long samples) {}

  /** What was let go of since recording was halted. */
  Optional<Lost> lost() {
    lock.lock();
    try {
      return firstLost == null || lastLost == null
          ? Optional.empty()
          : Optional.of(new Lost(firstLost, lastLost, lost));
    } finally {
      lock.unlock();
    }
  }

  /** Recording is not possible for now. */
  void halt() {
    lock.lock();
    try {
      halted = true;
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** It is again, and what was lost is written down. */
  void resume() {
    lock.lock();
    try {
      halted = false;
      firstLost = null;
      lastLost = null;
      lost = 0;
    } finally {
      lock.unlock();
    }
  }

  /**
   * Waits until the time is up, the queue half full, a sync asked for or the store closed; then
   * takes all there is. Writer only.
   */
  Batch take(Duration longest) {
    lock.lock();
    try {
      // an interrupt is dropped: left set, it would close the database at the next write, and the
      // writer stops by close() only
      await(() -> open.size() >= (capacity + 1) / 2 || asked != synced || closed, longest);
      taken = open;
      open = new Waiting();
      changed.signalAll();
      return new Batch(taken, asked, closed);
    } finally {
      lock.unlock();
    }
  }

  /**
   * What the writer has to do.
   *
   * @param ticket to give back when the batch is on disk
   * @param last whether nothing comes after
   */
  record Batch(Waiting samples, long ticket, boolean last) {}

  /** Commits what was taken: readers see it in the file from the moment they miss it here. */
  void commitTaken(Action commit) throws SQLException {
    lock.lock();
    try {
      commit.run();
      taken = new Waiting();
    } finally {
      lock.unlock();
    }
  }

  void onDisk(long ticket) {
    lock.lock();
    try {
      synced = Math.max(synced, ticket);
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** Asks for a sync now and waits for it; false if the time was not enough. */
  boolean sync(Duration longest) {
    lock.lock();
    try {
      long ticket = ++asked;
      changed.signalAll();
      if (await(() -> synced >= ticket, longest)) {
        Thread.currentThread().interrupt();
      }
      return synced >= ticket;
    } finally {
      lock.unlock();
    }
  }

  /** Asks for a sync now without waiting for it. */
  void hurry() {
    lock.lock();
    try {
      asked++;
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** Runs {@code openSnapshot} while nothing can move into the file; gives what is not there. */
  List<Measurement> snapshot(PointName point, Action openSnapshot) throws SQLException {
    lock.lock();
    try {
      openSnapshot.run();
      List<Measurement> ofPoint = new ArrayList<>();
      taken.copyTo(point, ofPoint);
      open.copyTo(point, ofPoint);
      return ofPoint;
    } finally {
      lock.unlock();
    }
  }

  void close() {
    lock.lock();
    try {
      closed = true;
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  boolean isClosed() {
    lock.lock();
    try {
      return closed;
    } finally {
      lock.unlock();
    }
  }

  /** Waits for a condition or the end of the time; true if the thread was interrupted meanwhile. */
  private boolean await(BooleanSupplier condition, Duration longest) {
    long end = System.nanoTime() + longest.toNanos();
    boolean interrupted = false;
    while (!condition.getAsBoolean()) {
      long left = end - System.nanoTime();
      if (left <= 0) {
        break;
      }
      try {
        changed.awaitNanos(left);
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    return interrupted;
  }
}
