package feedwitness.publish;

import feedwitness.alarm.AlarmEvent;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;

/** What is to be told on the streams, not yet written as text. */
sealed interface StreamNews {
  record Measured(Measurement measurement) implements StreamNews {}

  record Alarmed(AlarmEvent event) implements StreamNews {}

  /** What runs at a point changed, or the question about it. */
  record Fed(PointName point) implements StreamNews {}
}
