package feedwitness.app;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/** Stays until the process is asked to stop, then closes things in order, once. */
final class Stay {
  private Stay() {}

  /**
   * Returns when the time is up or the process is being stopped (SIGTERM, Ctrl-C); everything is
   * closed then.
   *
   * @param howLong null for ever
   */
  static void until(@Nullable Duration howLong, AutoCloseable service) {
    CountDownLatch asked = new CountDownLatch(1);
    CountDownLatch closed = new CountDownLatch(1);
    Thread hook =
        new Thread(
            () -> {
              asked.countDown();
              try {
                // The virtual machine ends when its hooks do: hold it until all is safe on disk.
                closed.await();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            "stop");
    Runtime.getRuntime().addShutdownHook(hook);
    try {
      wait(asked, howLong);
      service.close();
    } catch (Exception e) {
      Logger.error(e, "stopping failed");
    } finally {
      closed.countDown();
    }
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      Logger.debug("already stopping");
    }
  }

  private static void wait(CountDownLatch asked, @Nullable Duration howLong) {
    try {
      if (howLong == null) {
        asked.await();
      } else if (asked.await(howLong.toMillis(), TimeUnit.MILLISECONDS)) {
        Logger.debug("asked to stop");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
