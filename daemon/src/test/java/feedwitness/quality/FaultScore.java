package feedwitness.quality;

import feedwitness.quality.InjectedFaults.Event;
import feedwitness.quality.InjectedFaults.Kind;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Flags against injected faults, row by row; matches allow one row on either side. Rows in which
 * the background itself is broken are left out.
 *
 * @param raised rows flagged
 * @param right of these, rightly
 * @param kinds what was injected and found
 */
record FaultScore(int raised, int right, Map<Kind, Tally> kinds) {

  /**
   * Of one kind of fault.
   *
   * @param events injected
   * @param found of these, flagged at least once
   * @param rows injected
   * @param hit of these, flagged
   */
  record Tally(int events, int found, int rows, int hit) {
    Tally plus(Tally other) {
      return new Tally(
          events + other.events, found + other.found, rows + other.rows, hit + other.hit);
    }
  }

  FaultScore {
    kinds = Map.copyOf(kinds);
  }

  double precision() {
    return right / (double) Math.max(1, raised);
  }

  /** Events of every kind. */
  Tally all() {
    return but(null);
  }

  /** Events of every kind but one. */
  Tally but(@Nullable Kind left) {
    Tally sum = new Tally(0, 0, 0, 0);
    for (Map.Entry<Kind, Tally> one : kinds.entrySet()) {
      sum = one.getKey() == left ? sum : sum.plus(one.getValue());
    }
    return sum;
  }

  FaultScore plus(FaultScore other) {
    Map<Kind, Tally> sum = new EnumMap<>(Kind.class);
    sum.putAll(kinds);
    other.kinds.forEach((kind, tally) -> sum.merge(kind, tally, Tally::plus));
    return new FaultScore(raised + other.raised, right + other.right, sum);
  }

  static FaultScore of(InjectedFaults faults) {
    return of(faults, Integer.MAX_VALUE);
  }

  /** By flags that were added at most so many rows later. */
  static FaultScore of(InjectedFaults faults, int reach) {
    List<Flags> flags = faults.recording().judge(reach);
    int n = flags.size();
    boolean[] flagged = new boolean[n];
    boolean[] faulty = new boolean[n];
    for (int i = 0; i < n; i++) {
      flagged[i] = flags.get(i).list().stream().anyMatch(f -> f != QualityFlag.UNKNOWN);
      faulty[i] = faults.faulty().get(i);
    }
    int raised = 0;
    int right = 0;
    for (int i = 0; i < n; i++) {
      boolean near = StreamScore.around(faulty, i);
      if (flagged[i] && (near || !InjectedFaults.brokenAlready(faults.recording().rows().get(i)))) {
        raised++;
        right += near ? 1 : 0;
      }
    }
    Map<Kind, Tally> kinds = new EnumMap<>(Kind.class);
    for (Event event : faults.events()) {
      int hit = 0;
      boolean found = false;
      for (int i = event.first(); i < event.end(); i++) {
        hit += StreamScore.around(flagged, i) ? 1 : 0;
        found |= flagged[i];
      }
      Tally tally = new Tally(1, found ? 1 : 0, event.end() - event.first(), hit);
      kinds.merge(event.kind(), tally, Tally::plus);
    }
    return new FaultScore(raised, right, kinds);
  }
}
