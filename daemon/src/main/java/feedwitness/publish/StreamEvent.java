package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.PointStatus;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.time.Instant;
import java.util.List;

/** What goes out on a stream, ready as text. */
sealed interface StreamEvent {
  /** Comment that keeps the connection alive. */
  String PING = ": still here\n\n";

  /** How soon to come back after a loss, ms. */
  String RETRY = "retry: 3000\n";

  /** Something with a text that can be sent again to a page that missed it. */
  sealed interface Sent extends StreamEvent {
    /** Of the stream; empty for an event without. */
    String id();

    String text();
  }

  /** One measurement. */
  record Measured(PointName point, Stamp stamp, String text) implements Sent {
    static Measured of(PointStatus status, Stamp stamp, AlarmDesk alarms, Instant now) {
      String data = Json.text(PointMapping.map(status, alarms, now));
      return new Measured(status.point().name(), stamp, written("measurement", stamp.id(), data));
    }

    @Override
    public String id() {
      return stamp.id();
    }
  }

  /** Anything else that happened. */
  record Happened(String id, String text) implements Sent {
    static Happened alarm(AlarmEventJson event) {
      return new Happened(event.id(), written("alarm", event.id(), Json.text(event)));
    }

    static Happened fed(FeedingJson feeding) {
      return new Happened("", "event: feeding\ndata: " + Json.text(feeding) + "\n\n");
    }
  }

  private static String written(String event, String id, String data) {
    return "event: " + event + "\nid: " + id + "\ndata: " + data + "\n\n";
  }

  /** The client must load everything afresh. */
  record Reset() implements StreamEvent {
    static final String TEXT = "event: reset\ndata: {}\n\n";
  }

  /** The stream is over. */
  record End() implements StreamEvent {}

  /** The first event; also says how soon to come back. */
  static String snapshot(List<PointStatus> points, AlarmDesk alarms, Instant now) {
    return RETRY
        + "event: snapshot\ndata: "
        + Json.text(PointMapping.map(points, alarms, now))
        + "\n\n";
  }
}
