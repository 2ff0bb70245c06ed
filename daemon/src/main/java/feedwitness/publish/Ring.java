package feedwitness.publish;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * The last events of the stream, for pages that lost their connection for a moment. When full, the
 * oldest is forgotten. Not for several threads.
 */
final class Ring {
  /** Four probes at 1 Hz for two minutes, about half a megabyte. */
  static final int SIZE = 512;

  private final Deque<StreamEvent.Sent> events = new ArrayDeque<>();

  void add(StreamEvent.Sent event) {
    if (events.size() == SIZE) {
      events.removeFirst();
    }
    events.addLast(event);
  }

  void clear() {
    events.clear();
  }

  /** What came after an event; empty if that event is not remembered. */
  Optional<List<StreamEvent.Sent>> after(String id) {
    List<StreamEvent.Sent> later = new ArrayList<>();
    boolean found = false;
    for (StreamEvent.Sent event : events) {
      if (found) {
        later.add(event);
      }
      found |= id.equals(event.id());
    }
    return found ? Optional.of(later) : Optional.empty();
  }
}
