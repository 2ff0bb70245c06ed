package feedwitness.engine;

import feedwitness.acquire.SampleSink;
import feedwitness.host.ClockTrust;
import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Sample;
import java.util.ArrayList;
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
  private final ClockTrust trust;
  private final BlockingQueue<Entry> queue = new ArrayBlockingQueue<>(CAPACITY);
  private long sequence;
  private long dropped;

  /**
   * Samples that came together, mostly one, and where it differs from its point's usual basis,
   * their own.
   *
   * @param messages the octets they came in, where they came over a wire
   * @param done is told the last of them
   */
  record Entry(
      List<Sample> samples,
      List<Octets> messages,
      @Nullable Basis ownBasis,
      @Nullable Consumer<Measurement> done) {
    Entry {
      samples = List.copyOf(samples);
      messages = List.copyOf(messages);
    }
  }

  /** Makes the sample of a place in a row of samples. */
  interface AtPlace {
    Sample sample(Stamp stamp, int place);
  }

  /** With a clock that is right from the start. */
  public Intake(int boot, TimeSource clock) {
    this(boot, clock, ClockTrust.ALWAYS);
  }

  /**
   * @param trust decides whether a sample is dated
   */
  public Intake(int boot, TimeSource clock, ClockTrust trust) {
    this.boot = boot;
    this.clock = clock;
    this.trust = trust;
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
    if (!queue.offer(new Entry(List.of(atArrival.apply(stamp(1))), messages, ownBasis, done))) {
      dropped++;
      return false;
    }
    sequence++;
    return true;
  }

  /**
   * Many samples as one entry, with stamps that follow one another. Nothing is counted as dropped
   * if there is no room: whoever brings so many can bring them again.
   */
  synchronized boolean offerAll(
      int count, AtPlace each, Basis ownBasis, Consumer<Measurement> done) {
    List<Sample> samples = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      samples.add(each.sample(stamp(i + 1L), i));
    }
    if (!queue.offer(new Entry(samples, List.of(), ownBasis, done))) {
      return false;
    }
    sequence += count;
    return true;
  }

  /** The moment of now with the sequence of the last sample, for what is put on record. */
  public synchronized Stamp moment() {
    return stamp(0);
  }

  private Stamp stamp(long ahead) {
    // asked before the clock is read: a clock that is set in between is not believed yet
    boolean dated = trust.trusted();
    return new Stamp(
        boot,
        sequence + ahead,
        wholeMillis(clock.monotonicNanos()),
        clock.wall().toEpochMilli(),
        dated);
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

  /** Whether samples get a date now. */
  boolean dates() {
    return trust.trusted();
  }

  /** The next entry, or null if there is none now. */
  @Nullable Entry poll() {
    return queue.poll();
  }

  synchronized long dropped() {
    return dropped;
  }
}
