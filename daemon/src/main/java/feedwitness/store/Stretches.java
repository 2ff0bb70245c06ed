package feedwitness.store;

import feedwitness.ledger.Bucket;
import feedwitness.measurement.Measurement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Stretches of equal width side by side, aligned to 1970 UTC, in the order of time. */
final class Stretches {
  private final long widthMillis;
  private final TreeMap<Long, Stretch> byStart = new TreeMap<>();
  private long lastStart;
  private @Nullable Stretch last;

  Stretches(long widthMillis) {
    this.widthMillis = widthMillis;
  }

  void add(Measurement measurement) {
    at(measurement.stamp().wallMillis()).add(measurement);
  }

  void add(Rollup part) {
    at(part.startMillis()).add(part);
  }

  /** Most samples fall into the stretch of the one before. */
  private Stretch at(long millis) {
    Stretch known = last;
    if (known != null && millis >= lastStart && millis - lastStart < widthMillis) {
      return known;
    }
    lastStart = Math.floorDiv(millis, widthMillis) * widthMillis;
    Stretch found = byStart.computeIfAbsent(lastStart, unused -> new Stretch());
    last = found;
    return found;
  }

  List<Rollup> rollups() {
    List<Rollup> rollups = new ArrayList<>(byStart.size());
    for (Map.Entry<Long, Stretch> entry : byStart.entrySet()) {
      rollups.add(entry.getValue().rollup(entry.getKey()));
    }
    return rollups;
  }

  List<Bucket> buckets() {
    List<Bucket> buckets = new ArrayList<>(byStart.size());
    for (Map.Entry<Long, Stretch> entry : byStart.entrySet()) {
      buckets.add(entry.getValue().bucket(entry.getKey()));
    }
    return buckets;
  }
}
