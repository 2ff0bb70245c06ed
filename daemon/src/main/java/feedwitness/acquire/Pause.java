package feedwitness.acquire;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** How a session waits between two tries to open its wire. */
interface Pause {
  /** In real time. */
  Pause REAL =
      (howLong, stopped) -> {
        try {
          return !stopped.await(howLong.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
          // Nobody interrupts a session; whoever does wants it to end.
          stopped.countDown();
          Thread.currentThread().interrupt();
          return false;
        }
      };

  /** Waits; returns whether the session shall go on. */
  boolean rest(Duration howLong, CountDownLatch stopped);

  /** The session's thread is about to end. */
  default void ended() {}
}
