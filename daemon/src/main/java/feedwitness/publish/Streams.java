package feedwitness.publish;

import feedwitness.engine.LiveView;
import feedwitness.measurement.Measurement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;

/**
 * All open streams. The engine's thread only drops a measurement into the inbox; one thread of ours
 * writes it as text, once for all clients, and deals it out.
 */
final class Streams implements AutoCloseable {
  private static final Duration FAREWELL = Duration.ofSeconds(2);
  private static final Duration LAST_RESORT = Duration.ofSeconds(5);

  private final LiveView live;
  private final StreamLimits limits;
  private final BlockingQueue<Measurement> inbox;
  private final AtomicBoolean mustReset = new AtomicBoolean();
  private final Map<EventStream, Thread> open = new ConcurrentHashMap<>();
  private final Thread dealer = new Thread(this::deal, "stream-dealer");
  private LiveView.@Nullable Subscription subscription;
  private volatile boolean closed;

  Streams(LiveView live, StreamLimits limits) {
    this.live = live;
    this.limits = limits;
    this.inbox = new ArrayBlockingQueue<>(limits.inbox());
    dealer.setDaemon(true);
  }

  /** Begins to take measurements. */
  void start() {
    dealer.start();
    subscription = live.subscribe(this::take);
  }

  /** On the engine's thread: never waits. What does not fit is made good by a reset. */
  private void take(Measurement measurement) {
    if (!open.isEmpty() && !inbox.offer(measurement)) {
      mustReset.set(true);
    }
  }

  /** Tells every client to load afresh. */
  void reset() {
    mustReset.set(true);
  }

  int count() {
    return open.size();
  }

  /**
   * Opens a stream.
   *
   * @throws ProblemException status 503 if there are too many or the service is stopping
   */
  synchronized void open(EventStream.Wire wire) {
    if (closed) {
      throw Problem.of(503, "the service is stopping; try again when it runs").exception();
    }
    if (open.size() >= limits.most()) {
      throw Problem.of(
              503,
              "%d pages are watching, which is the limit; close some and try again"
                  .formatted(limits.most()))
          .exception();
    }
    EventStream stream = new EventStream(live, limits, wire);
    Thread thread = new Thread(() -> serve(stream), "stream-writer");
    thread.setDaemon(true);
    open.put(stream, thread);
    thread.start();
  }

  private void serve(EventStream stream) {
    try {
      stream.run();
    } finally {
      open.remove(stream);
    }
  }

  private void deal() {
    try {
      while (!closed) {
        Measurement measurement = inbox.poll(200, TimeUnit.MILLISECONDS);
        if (mustReset.getAndSet(false)) {
          dealOut(new StreamEvent.Reset());
        }
        if (measurement != null && !open.isEmpty()) {
          live.point(measurement.point())
              .map(before -> Statuses.with(before, measurement))
              .map(now -> StreamEvent.Measured.of(now, measurement.stamp(), live.now()))
              .ifPresent(this::dealOut);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void dealOut(StreamEvent event) {
    for (EventStream stream : open.keySet()) {
      if (!stream.offer(event)) {
        stream.abort();
      }
    }
  }

  /** Ends every stream and waits until its thread is gone; connections that hang are broken. */
  @Override
  public void close() {
    List<Map.Entry<EventStream, Thread>> last;
    synchronized (this) {
      closed = true;
      last = new ArrayList<>(open.entrySet());
    }
    if (subscription != null) {
      subscription.close();
    }
    last.forEach(entry -> entry.getKey().end());
    join(last, FAREWELL);
    last.stream()
        .filter(entry -> entry.getValue().isAlive())
        .forEach(entry -> entry.getKey().abort());
    join(last, LAST_RESORT);
  }

  private static void join(List<Map.Entry<EventStream, Thread>> streams, Duration longest) {
    long deadline = System.nanoTime() + longest.toNanos();
    try {
      for (Map.Entry<EventStream, Thread> entry : streams) {
        long left = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
        entry.getValue().join(Math.max(1, left));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
