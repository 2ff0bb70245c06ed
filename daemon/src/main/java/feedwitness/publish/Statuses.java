package feedwitness.publish;

import feedwitness.engine.PointStatus;
import feedwitness.measurement.Measurement;
import java.util.Optional;

/** A point's status as it is with one more measurement. */
final class Statuses {
  private Statuses() {}

  static PointStatus with(PointStatus before, Measurement latest) {
    boolean hasReading = Double.isFinite(latest.conductivityMilliSiemensPerCm());
    return new PointStatus(
        before.point(),
        Optional.of(latest),
        hasReading ? Optional.of(latest) : before.lastReading());
  }
}
