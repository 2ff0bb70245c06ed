package feedwitness.watch.drift;

import feedwitness.quantity.PointName;
import feedwitness.watch.diagnosis.Diagnosis;
import feedwitness.watch.drift.DriftFinding.Confidence;
import feedwitness.watch.drift.DriftFinding.Kind;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.time.Instant;

/** Dates findings of one line by its clock. */
final class Teller {
  private final PointName line;
  private final LineClock clock;

  Teller(PointName line, LineClock clock) {
    this.line = line;
    this.clock = clock;
  }

  /** In percent; NaN where there is none. */
  record Size(double percent, double plusMinus) {}

  DriftFinding finding(
      Kind kind,
      Stage stage,
      double begun,
      double detected,
      Size size,
      Confidence confidence,
      Diagnosis why,
      String said) {
    return new DriftFinding(
        line,
        kind,
        stage,
        Instant.ofEpochMilli(clock.wallMillis(begun)),
        Instant.ofEpochMilli(clock.wallMillis(detected)),
        size.percent(),
        size.plusMinus(),
        confidence,
        why,
        said);
  }
}
