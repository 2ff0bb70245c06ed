package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.Stamp;
import java.util.ArrayList;
import java.util.List;

/** Measurements of one point that will be one {@link Run}: cut as they come, packed later. */
final class Piece {
  /** The point has no number yet, and none is needed to see where a run ends. */
  private static final int NO_NUMBER = 0;

  private final RunKey key;
  private final List<Measurement> measurements;

  /**
   * @param expected how many there will be, if they go on as before
   */
  Piece(Stamp first, int expected) {
    this.key = RunKey.of(NO_NUMBER, first);
    this.measurements = new ArrayList<>(expected);
  }

  boolean takes(Stamp stamp) {
    return measurements.size() < Run.MAX_SAMPLES && key.fits(stamp);
  }

  void add(Measurement measurement) {
    measurements.add(measurement);
  }

  List<Measurement> measurements() {
    return measurements;
  }

  /**
   * What is to be kept of it. Its bases must have numbers.
   *
   * @param point number of the point
   */
  Run run(int point, Catalogue catalogue) {
    List<Kept> kept = new ArrayList<>(measurements.size());
    int basis = 0;
    Measurement before = null;
    for (Measurement measurement : measurements) {
      if (before == null || !Lane.sameBasis(before, measurement)) {
        basis = catalogue.find(measurement.basis()).orElseThrow();
      }
      before = measurement;
      kept.add(Kept.of(measurement, basis));
    }
    return new Run(RunKey.of(point, measurements.get(0).stamp()), kept);
  }

  List<PackedChunk> pack(int point, Catalogue catalogue) {
    return PackedChunk.of(run(point, catalogue), measurements);
  }
}
