package feedwitness.quality;

import feedwitness.quality.InjectedFaults.Event;
import feedwitness.quality.InjectedFaults.Kind;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Flags against injected faults, row by row; matches allow one row on either side. Rows in which
 * the background itself is broken are left out.
 *
 * @param rows faulty rows
 * @param hit of these, flagged
 * @param raised rows flagged
 * @param right of these, rightly
 * @param events faults by kind
 * @param found of these, flagged at least once
 */
record FaultScore(
    int rows, int hit, int raised, int right, Map<Kind, Integer> events, Map<Kind, Integer> found) {

  FaultScore {
    events = Map.copyOf(events);
    found = Map.copyOf(found);
  }

  double recall() {
    return hit / (double) Math.max(1, rows);
  }

  double precision() {
    return right / (double) Math.max(1, raised);
  }

  int eventCount() {
    return events.values().stream().mapToInt(Integer::intValue).sum();
  }

  int foundCount() {
    return found.values().stream().mapToInt(Integer::intValue).sum();
  }

  static FaultScore of(InjectedFaults faults) {
    List<Flags> flags = faults.recording().judge();
    int n = flags.size();
    boolean[] flagged = new boolean[n];
    boolean[] faulty = new boolean[n];
    for (int i = 0; i < n; i++) {
      flagged[i] = flags.get(i).list().stream().anyMatch(f -> f != QualityFlag.UNKNOWN);
      faulty[i] = faults.faulty().get(i);
    }
    int[] counts = new int[4];
    for (int i = 0; i < n; i++) {
      if (faulty[i]) {
        counts[0]++;
        counts[1] += StreamScore.around(flagged, i) ? 1 : 0;
      }
      boolean near = StreamScore.around(faulty, i);
      if (flagged[i] && (near || !InjectedFaults.brokenAlready(faults.recording().rows().get(i)))) {
        counts[2]++;
        counts[3] += near ? 1 : 0;
      }
    }
    Map<Kind, Integer> events = new TreeMap<>();
    Map<Kind, Integer> found = new TreeMap<>();
    for (Event event : faults.events()) {
      boolean any = false;
      for (int i = event.first(); i < event.end(); i++) {
        any |= flagged[i];
      }
      events.merge(event.kind(), 1, Integer::sum);
      found.merge(event.kind(), any ? 1 : 0, Integer::sum);
    }
    return new FaultScore(counts[0], counts[1], counts[2], counts[3], events, found);
  }
}
