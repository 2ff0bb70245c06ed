package feedwitness.publish;

import java.util.concurrent.Semaphore;

/**
 * Lets requests into the rest of the service only while it is open, and makes closing wait until
 * all are out. The HTTP server interrupts its threads when it stops, and an interrupt inside the
 * store would close the database: when it stops, none of its threads may still be in there.
 */
final class OpenHours {
  private static final int EVERYBODY = 1_000;

  private final Semaphore passes = new Semaphore(EVERYBODY);
  private volatile boolean closed;

  /**
   * Does the work of a request.
   *
   * @throws ProblemException status 503 once closed
   */
  void during(Work work) throws Exception {
    if (closed || !passes.tryAcquire()) {
      throw Problem.of(503, "the service is stopping; try again when it runs").exception();
    }
    try {
      work.run();
    } finally {
      passes.release();
    }
  }

  /** Whether work that takes long should end early. */
  boolean isClosing() {
    return closed;
  }

  /** Lets nobody in any more and waits for those inside. Closing twice is harmless. */
  synchronized void close() {
    if (!closed) {
      closed = true;
      passes.acquireUninterruptibly(EVERYBODY);
    }
  }

  /** What a request has to do inside. */
  @FunctionalInterface
  interface Work {
    void run() throws Exception;
  }
}
