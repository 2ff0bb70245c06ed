package feedwitness.publish.message;

import feedwitness.ledger.Evidence;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.tinylog.Logger;

/**
 * Carries the letters of one channel, one at a time, on a thread that is there only while there is
 * something to carry.
 */
final class Courier {
  /** A letter and a test at most: the lane has one under way, and one test is let through. */
  private static final int QUEUE = 4;

  private static final long THREAD_IDLE_SECONDS = 10;
  private static final long RECORD_SECONDS = 10;
  private static final long END_SECONDS = 5;

  private final Channel channel;
  private final Consumer<Result> done;
  private final ThreadPoolExecutor thread;
  private final AtomicInteger tests = new AtomicInteger();
  private final ConcurrentMap<String, CompletableFuture<Evidence>> records =
      new ConcurrentHashMap<>();

  /** What came of an attempt. */
  record Result(Courier courier, Letter letter, Delivery delivery) {}

  Courier(Channel channel, Consumer<Result> done) {
    this.channel = channel;
    this.done = done;
    this.thread =
        new ThreadPoolExecutor(
            1,
            1,
            THREAD_IDLE_SECONDS,
            TimeUnit.SECONDS,
            new ArrayBlockingQueue<>(QUEUE),
            work -> {
              Thread made = new Thread(work, "message-" + channel.name());
              made.setDaemon(true);
              return made;
            },
            new ThreadPoolExecutor.AbortPolicy());
    thread.allowCoreThreadTimeOut(true);
  }

  Channel channel() {
    return channel;
  }

  boolean testing() {
    return tests.get() > 0;
  }

  /** A letter is being put on record; the first attempt waits for that. */
  void recorded(Letter letter, CompletableFuture<Evidence> record) {
    records.put(letter.id(), record);
  }

  CompletableFuture<Evidence> onRecord(Letter letter) {
    CompletableFuture<Evidence> record = records.remove(letter.id());
    return record == null ? CompletableFuture.completedFuture(null) : record;
  }

  /** Tries soon. */
  void send(Letter letter, CompletableFuture<Evidence> record) {
    if (letter.kind() == Letter.Kind.TEST) {
      tests.incrementAndGet();
    }
    try {
      thread.execute(() -> ended(letter, attempt(letter, record)));
    } catch (RejectedExecutionException e) {
      ended(letter, new Delivery.Later("the service is stopping"));
    }
  }

  private void ended(Letter letter, Delivery delivery) {
    if (letter.kind() == Letter.Kind.TEST) {
      tests.decrementAndGet();
    }
    done.accept(new Result(this, letter, delivery));
  }

  private Delivery attempt(Letter letter, CompletableFuture<Evidence> record) {
    try {
      // On record first: then a crash right after delivery leads to a repeat under the same id,
      // which receivers know. A ledger that can't write must not keep an alarm from people.
      record.get(RECORD_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException e) {
      Logger.warn("message {} is sent without being on record", letter.id());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Delivery.Later("the service is stopping");
    }
    try {
      return channel.deliver(letter);
    } catch (RuntimeException e) {
      Logger.error(e, "channel {} failed", channel.name());
      return new Delivery.Later("the service failed on it; its log says why");
    }
  }

  void close() {
    channel.close();
    thread.shutdown();
  }

  void awaitEnd() {
    try {
      if (!thread.awaitTermination(END_SECONDS, TimeUnit.SECONDS)) {
        Logger.warn("channel {} has not ended its attempt", channel.name());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
