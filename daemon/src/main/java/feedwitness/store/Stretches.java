package feedwitness.store;

import feedwitness.ledger.Bucket;
import feedwitness.measurement.Measurement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Stretches of equal width side by side, aligned to 1970 UTC, in the order of time. */
final class Stretches {
  private final long widthMillis;
  private final TreeMap<Long, Stretch> byStart = new TreeMap<>();

  Stretches(long widthMillis) {
    this.widthMillis = widthMillis;
  }

  void add(Measurement measurement) {
    at(measurement.stamp().wallMillis()).add(measurement);
  }

  void add(Rollup part) {
    at(part.startMillis()).add(part);
  }

  private Stretch at(long millis) {
    long start = Math.floorDiv(millis, widthMillis) * widthMillis;
    return byStart.computeIfAbsent(start, unused -> new Stretch());
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
