package feedwitness.app;

import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import feedwitness.publish.RemoteService;
import java.io.IOException;

/** A service that runs: readings go through it, as its own do. */
record RunningTarget(RemoteService service) implements ImportTarget {
  private static final int TRIES = 600;
  private static final long PAUSE_MILLIS = 200;

  @Override
  public ImportOutcome take(ImportBatch batch) throws IOException {
    return service.take(batch);
  }

  @Override
  public void awaitDurable(int boot, long sequence) throws IOException {
    try {
      for (int i = 0; i < TRIES; i++) {
        if (service.isDurable(boot, sequence)) {
          return;
        }
        Thread.sleep(PAUSE_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    throw new IOException(
        "the service has the readings but does not say that they are safe on disk; look at the first line of its page");
  }

  @Override
  public void close() {
    // nothing is held
  }
}
