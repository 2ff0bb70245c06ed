package feedwitness.engine;

import feedwitness.acquire.SampleSink;
import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Sample;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Where all samples enter: stamps them on the caller's thread and queues them in the order of their
 * stamps. Bounded; when full, the newest sample is dropped and counted, because a wire thread must
 * never wait: octets lost by an overrun port would damage frames unseen.
 */
public final class Intake implements SampleSink {
  /** About 17 minutes of four probes at 1 Hz. */
  private static final int CAPACITY = 4096;

  private final int boot;
  private final TimeSource clock;
  private final BlockingQueue<Entry> queue = new ArrayBlockingQueue<>(CAPACITY);
  private long sequence;
  private long dropped;

  /** A sample, and where it differs from its point's usual basis, its own. */
  record Entry(
      Sample sample,
      List<Octets> messages,
      @Nullable Basis ownBasis,
      @Nullable Consumer<Measurement> done) {}

  public Intake(int boot, TimeSource clock) {
    this.boot = boot;
    this.clock = clock;
  }

  @Override
  public void accept(Function<Stamp, Sample> atArrival) {
    offer(atArrival, List.of(), null, null);
  }

  @Override
  public void accept(Function<Stamp, Sample> atArrival, List<Octets> messages) {
    offer(atArrival, messages, null, null);
  }

  /** Returns whether there was room. */
  synchronized boolean offer(
      Function<Stamp, Sample> atArrival,
      List<Octets> messages,
      @Nullable Basis ownBasis,
      @Nullable Consumer<Measurement> done) {
    Stamp stamp =
        new Stamp(
            boot,
            sequence + 1,
            wholeMillis(clock.monotonicNanos()),
            clock.wall().toEpochMilli(),
            true);
    if (!queue.offer(new Entry(atArrival.apply(stamp), messages, ownBasis, done))) {
      dropped++;
      return false;
    }
    sequence++;
    return true;
  }

  /**
   * No wire is timed better than to a millisecond, and digits that say nothing would quadruple what
   * a reading takes in the store.
   */
  private static long wholeMillis(long nanos) {
    return Math.floorDiv(nanos, 1_000_000L) * 1_000_000L;
  }

  /** The next entry, or null if none came in time. */
  @Nullable Entry poll(long millis) throws InterruptedException {
    return queue.poll(millis, TimeUnit.MILLISECONDS);
  }

  /** The next entry, or null if there is none now. */
  @Nullable Entry poll() {
    return queue.poll();
  }

  synchronized long dropped() {
    return dropped;
  }
}
