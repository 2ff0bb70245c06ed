package feedwitness.store;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Remembers which run of each point is being filled, and so when there is something to seal: as
 * soon as a sample of another hour came, or none at all for an hour. Judged by the samples and by
 * real time, not by the wall clock, which may jump. Writer only.
 */
final class OpenRuns {
  private static final long IDLE_NANOS = Duration.ofHours(1).toNanos();

  private final Map<Integer, RunKey> keys = new HashMap<>();
  private final Map<Integer, Long> touched = new HashMap<>();
  private boolean due;

  void add(List<Run> runs, long nanos) {
    for (Run run : runs) {
      int point = run.key().point();
      RunKey open = keys.putIfAbsent(point, run.key());
      due |= open != null && !open.equals(run.key());
      touched.put(point, nanos);
    }
  }

  /** Whether there are hot samples of a point. */
  boolean has(int point) {
    return keys.containsKey(point);
  }

  boolean due(long nanos) {
    for (int point : keys.keySet()) {
      due |= idle(point, nanos);
    }
    return due;
  }

  /** Whether more may be expected of a run. */
  boolean stillOpen(RunKey key, long nanos) {
    return touched.containsKey(key.point()) && !idle(key.point(), nanos);
  }

  private boolean idle(int point, long nanos) {
    return nanos - touched.getOrDefault(point, nanos) > IDLE_NANOS;
  }

  void sealed(Map<Integer, RunKey> open) {
    keys.clear();
    keys.putAll(open);
    due = false;
  }

  void demand() {
    due = true;
  }
}
