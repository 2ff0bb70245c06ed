package feedwitness.publish.access;

import feedwitness.quantity.TimeSource;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** Codes that wait to be typed: few, short-lived, each good for one device. Never on disk. */
final class PairingCodes {
  static final Duration VALID = Duration.ofMinutes(5);

  /** A further one puts the oldest out of use. */
  static final int MOST = 4;

  /** A code and what it grants; {@code by} showed it. */
  record Waiting(String code, Role role, String by, long nanos) {}

  private final TimeSource clock;
  private final Secrets secrets;
  private final Deque<Waiting> waiting = new ArrayDeque<>(MOST);

  PairingCodes(TimeSource clock, Secrets secrets) {
    this.clock = clock;
    this.secrets = secrets;
  }

  synchronized String offer(Role role, String by) {
    forget();
    if (waiting.size() == MOST) {
      waiting.removeFirst();
    }
    String code = secrets.code();
    waiting.addLast(new Waiting(code, role, by, clock.monotonicNanos()));
    return code;
  }

  /** The code, if it waits; it goes on waiting. All are compared, whichever it is. */
  synchronized Optional<Waiting> find(String code) {
    forget();
    Optional<Waiting> found = Optional.empty();
    for (Waiting each : waiting) {
      if (Secrets.same(each.code, code)) {
        found = Optional.of(each);
      }
    }
    return found;
  }

  /** Takes a code out of use. */
  synchronized void use(Waiting code) {
    waiting.remove(code);
  }

  private void forget() {
    long now = clock.monotonicNanos();
    waiting.removeIf(each -> now - each.nanos >= VALID.toNanos());
  }
}
