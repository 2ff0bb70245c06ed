package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.LiveView;
import feedwitness.engine.PointStatus;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * One client's stream. Its own thread writes and may be held up by a slow client for long; whoever
 * offers an event never waits.
 */
final class EventStream implements Runnable {
  private final LiveView live;
  private final AlarmDesk alarms;
  private final StreamLimits limits;
  private final Wire wire;
  private final Beginning beginning;
  private final BlockingQueue<StreamEvent> queue;
  private volatile boolean over;

  /**
   * How a stream begins.
   *
   * @param missed what a page that was here before did not get; if null, it gets everything as it
   *     stands
   * @param lost whether it was here before, and what it missed is no longer known
   */
  record Beginning(@Nullable List<StreamEvent.Sent> missed, boolean lost) {}

  EventStream(
      LiveView live, AlarmDesk alarms, StreamLimits limits, Wire wire, Beginning beginning) {
    this.live = live;
    this.alarms = alarms;
    this.limits = limits;
    this.wire = wire;
    this.beginning = beginning;
    this.queue = new ArrayBlockingQueue<>(limits.queue());
  }

  /** Queues an event; false if the client is too slow for it to fit. */
  boolean offer(StreamEvent event) {
    return queue.offer(event);
  }

  /** Ends the stream after what is being written. */
  void end() {
    over = true;
    queue.clear();
    queue.offer(new StreamEvent.End());
  }

  /** Breaks the connection, also in the middle of a write that waits. */
  void abort() {
    over = true;
    wire.abort();
  }

  @Override
  public void run() {
    try {
      write(wire.output());
    } catch (IOException | InterruptedException e) {
      // The client went away or was dropped, which ends a stream like anything else.
      over = true;
    } finally {
      wire.complete();
    }
  }

  private void write(OutputStream out) throws IOException, InterruptedException {
    Map<PointName, Stamp> shown = new HashMap<>();
    begin(out, shown);
    while (!over) {
      StreamEvent event = queue.poll(limits.pingEvery().toMillis(), TimeUnit.MILLISECONDS);
      if (!wire.admitted()) {
        over = true;
      } else if (event == null) {
        send(out, StreamEvent.PING);
      } else if (event instanceof StreamEvent.Reset) {
        send(out, StreamEvent.Reset.TEXT);
      } else if (event instanceof StreamEvent.Measured measured && isNews(measured, shown)) {
        send(out, measured.text());
      } else if (event instanceof StreamEvent.Happened happened) {
        send(out, happened.text());
      }
    }
  }

  private void begin(OutputStream out, Map<PointName, Stamp> shown) throws IOException {
    List<StreamEvent.Sent> missed = beginning.missed();
    if (missed != null) {
      StringBuilder text = new StringBuilder(StreamEvent.RETRY + StreamEvent.PING);
      missed.forEach(event -> text.append(event.text()));
      send(out, text.toString());
      return;
    }
    if (beginning.lost()) {
      send(out, StreamEvent.Reset.TEXT);
    }
    List<PointStatus> points = live.points();
    points.forEach(
        status -> status.latest().ifPresent(m -> shown.put(status.point().name(), m.stamp())));
    send(out, StreamEvent.snapshot(points, alarms, live.now()));
  }

  /** Measurements that were queued while the snapshot was taken are in it already. */
  private static boolean isNews(StreamEvent.Measured event, Map<PointName, Stamp> shown) {
    Stamp before = shown.get(event.point());
    return before == null || event.stamp().compareTo(before) > 0;
  }

  private static void send(OutputStream out, String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  /** The client's connection. */
  interface Wire {
    OutputStream output() throws IOException;

    /** Whether the client is still let in: a device that was shut out hears no more. */
    boolean admitted();

    /** Ends the answer properly; harmless if the connection is gone. */
    void complete();

    /** Closes the connection under whoever writes to it. */
    void abort();
  }
}
