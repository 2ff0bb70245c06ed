package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.LiveView;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;

/**
 * All open streams. Whoever tells news only drops them into the inbox; one thread of ours writes
 * them as text, once for all clients, and deals it out.
 */
final class Streams implements AutoCloseable {
  private static final Duration FAREWELL = Duration.ofSeconds(2);
  private static final Duration LAST_RESORT = Duration.ofSeconds(5);

  /** So long after the last page went, what happens is still kept for it. */
  private static final Duration MEMORY = Duration.ofMinutes(2);

  private final LiveView live;
  private final StreamLimits limits;
  private final AlarmDesk alarms;
  private final BlockingQueue<StreamNews> inbox;
  private final Ring ring = new Ring();
  private final AtomicBoolean mustReset = new AtomicBoolean();
  private final Map<EventStream, Thread> open = new ConcurrentHashMap<>();
  private final Thread dealer = new Thread(this::deal, "stream-dealer");
  private final List<LiveView.Subscription> subscriptions = new ArrayList<>();
  private volatile long watchedNanos;
  private volatile boolean closed;

  Streams(LiveView live, AlarmDesk alarms, StreamLimits limits) {
    this.live = live;
    this.alarms = alarms;
    this.watchedNanos = System.nanoTime() - MEMORY.toNanos();
    this.limits = limits;
    this.inbox = new ArrayBlockingQueue<>(limits.inbox());
    dealer.setDaemon(true);
  }

  /** Begins to take news. */
  void start() {
    dealer.start();
    subscriptions.add(live.subscribe(m -> take(new StreamNews.Measured(m))));
    subscriptions.add(alarms.subscribe(event -> take(new StreamNews.Alarmed(event))));
    subscriptions.add(alarms.subscribeFeeding(point -> take(new StreamNews.Fed(point))));
  }

  /** On the teller's thread: never waits. What does not fit is made good by a reset. */
  private void take(StreamNews news) {
    if (isWatched() && !inbox.offer(news)) {
      mustReset.set(true);
    }
  }

  /** Whether a page is open, or was lately and may come back for what it missed. */
  private boolean isWatched() {
    return !open.isEmpty() || System.nanoTime() - watchedNanos < MEMORY.toNanos();
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
   * @param lastId of the last event the client got, if it was here before
   * @throws ProblemException status 503 if there are too many or the service is stopping
   */
  synchronized void open(EventStream.Wire wire, @Nullable String lastId) {
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
    EventStream stream = new EventStream(live, alarms, limits, wire, beginning(lastId));
    Thread thread = new Thread(() -> serve(stream), "stream-writer");
    thread.setDaemon(true);
    open.put(stream, thread);
    thread.start();
  }

  private EventStream.Beginning beginning(@Nullable String lastId) {
    return lastId == null || lastId.isBlank()
        ? new EventStream.Beginning(null, false)
        : ring.after(lastId)
            .map(missed -> new EventStream.Beginning(missed, false))
            .orElse(new EventStream.Beginning(null, true));
  }

  private void serve(EventStream stream) {
    try {
      stream.run();
    } finally {
      watchedNanos = System.nanoTime();
      open.remove(stream);
    }
  }

  private void deal() {
    try {
      while (!closed) {
        StreamNews news = inbox.poll(200, TimeUnit.MILLISECONDS);
        if (mustReset.getAndSet(false)) {
          dealOut(new StreamEvent.Reset());
        }
        if (!isWatched()) {
          forget();
        } else if (news != null) {
          written(news).ifPresent(this::dealOut);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private Optional<StreamEvent> written(StreamNews news) {
    if (news instanceof StreamNews.Measured measured) {
      Measurement measurement = measured.measurement();
      return live.point(measurement.point())
          .map(before -> Statuses.with(before, measurement))
          .map(now -> StreamEvent.Measured.of(now, measurement.stamp(), alarms, live.now()));
    }
    if (news instanceof StreamNews.Alarmed alarmed) {
      return alarms
          .alarm(alarmed.event().key())
          .map(standing -> AlarmJson.of(standing, live.site(), live.now()))
          .map(json -> StreamEvent.Happened.alarm(AlarmEventJson.of(alarmed.event(), json)));
    }
    PointName point = ((StreamNews.Fed) news).point();
    return alarms.feeding().stream()
        .filter(status -> status.point().name().equals(point))
        .findFirst()
        .map(status -> StreamEvent.Happened.fed(FeedingJson.of(status, alarms.source(point))));
  }

  private synchronized void forget() {
    ring.clear();
  }

  /** In step with {@link #open}: no page misses an event between its beginning and what follows. */
  private synchronized void dealOut(StreamEvent event) {
    if (event instanceof StreamEvent.Sent sent) {
      ring.add(sent);
    } else {
      ring.clear();
    }
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
    subscriptions.forEach(LiveView.Subscription::close);
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
