package feedwitness.alarm;

import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * More alarms than a person can answer one by one. IEC 62682 speaks of a flood from ten in ten
 * minutes for an operator at a desk; a grower with a hose in hand gets half of that.
 */
final class Flood {
  static final int MOST = 5;
  static final Duration WINDOW = Duration.ofMinutes(10);

  private final Deque<Long> raised = new ArrayDeque<>();
  private int boot;

  /** One more was raised; whether it is one too many. */
  boolean add(Stamp now) {
    forget(now);
    raised.addLast(now.monotonicNanos());
    return raised.size() > MOST;
  }

  /** How many were raised within the window. */
  int count(Stamp now) {
    forget(now);
    return raised.size();
  }

  private void forget(Stamp now) {
    if (now.boot() != boot) {
      raised.clear();
      boot = now.boot();
    }
    long start = now.monotonicNanos() - WINDOW.toNanos();
    while (!raised.isEmpty() && raised.getFirst() <= start) {
      raised.removeFirst();
    }
  }
}
