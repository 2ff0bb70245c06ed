package feedwitness.publish;

import feedwitness.engine.PointStatus;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.time.Instant;
import java.util.List;

/** What goes out on a stream, ready as text. */
sealed interface StreamEvent {
  /** Comment that keeps the connection alive. */
  String PING = ": still here\n\n";

  /** One measurement. */
  record Measured(PointName point, Stamp stamp, String text) implements StreamEvent {
    static Measured of(PointStatus status, Stamp stamp, Instant now) {
      String data = Json.text(PointMapping.map(status, now));
      return new Measured(
          status.point().name(),
          stamp,
          "event: measurement\nid: " + stamp.id() + "\ndata: " + data + "\n\n");
    }
  }

  /** The client must load everything afresh. */
  record Reset() implements StreamEvent {
    static final String TEXT = "event: reset\ndata: {}\n\n";
  }

  /** The stream is over. */
  record End() implements StreamEvent {}

  /** The first event; also says how soon to come back after a loss. */
  static String snapshot(List<PointStatus> points, Instant now) {
    return "retry: 3000\nevent: snapshot\ndata: "
        + Json.text(PointMapping.map(points, now))
        + "\n\n";
  }
}
