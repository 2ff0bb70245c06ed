package feedwitness.watch.drift;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * Events that may belong to a change under way: they join what is normal once the sums have sunk
 * again, all of them, so that nothing is selected; and never if a change is found.
 */
final class Waiting {
  private static final int MOST = 64;

  private final Deque<Pair> events = new ArrayDeque<>();

  private record Pair(Judged event, @Nullable Judged before) {}

  /** One more waits; the oldest stops waiting when there are too many. */
  void add(Judged event, @Nullable Judged before, Baseline baseline) {
    events.addLast(new Pair(event, before));
    if (events.size() > MOST) {
      Pair oldest = events.removeFirst();
      baseline.learn(oldest.event(), oldest.before());
    }
  }

  /** All join. */
  void join(Baseline baseline) {
    for (Pair pair : events) {
      baseline.learn(pair.event(), pair.before());
    }
    events.clear();
  }

  void drop() {
    events.clear();
  }

  void write(StateWriter out) {
    out.whole(events.size());
    for (Pair pair : events) {
      Judged.write(pair.event(), out);
      Judged.write(pair.before(), out);
    }
  }

  void read(StateReader in) {
    events.clear();
    int count = in.count(MOST);
    for (int i = 0; i < count; i++) {
      Judged event = Judged.read(in);
      Judged before = Judged.read(in);
      if (event != null) {
        events.addLast(new Pair(event, before));
      }
    }
  }
}
