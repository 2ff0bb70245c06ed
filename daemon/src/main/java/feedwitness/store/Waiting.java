package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Samples that are not in the file yet, by point. Not changed any more once the writer has it. */
final class Waiting {
  private final Map<PointName, Lane> lanes = new HashMap<>();
  private @Nullable Stamp youngest;
  private boolean lastDated;
  private int size;

  void add(Measurement measurement) {
    lanes.computeIfAbsent(measurement.point(), point -> new Lane()).add(measurement);
    Stamp stamp = measurement.stamp();
    if (youngest == null || stamp.compareTo(youngest) > 0) {
      youngest = stamp;
    }
    lastDated = stamp.dated();
    size++;
  }

  int size() {
    return size;
  }

  SortedMap<PointName, Lane> lanes() {
    return new TreeMap<>(lanes);
  }

  /** Last in (boot, sequence) order; empty if there is none. */
  Optional<Stamp> youngest() {
    return Optional.ofNullable(youngest);
  }

  /** Whether the sample that came last had a date. */
  boolean lastDated() {
    return lastDated;
  }

  void copyTo(PointName point, List<Measurement> all) {
    Lane lane = lanes.get(point);
    if (lane != null) {
      lane.copyTo(all);
    }
  }
}
