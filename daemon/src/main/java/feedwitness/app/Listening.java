package feedwitness.app;

import feedwitness.acquire.PortPlan;
import feedwitness.acquire.PortSession;
import feedwitness.acquire.WireObserver;
import feedwitness.quantity.TimeSource;
import feedwitness.wire.PortOpener;
import java.time.Duration;

/** Runs a real session on a wire for a while, for somebody to look on. Nothing is kept. */
final class Listening {
  private final PortSession session;
  private final Thread thread;

  Listening(PortPlan plan, PortOpener opener, WireObserver observer) {
    session = new PortSession(plan, opener, TimeSource.system(), sample -> {}, observer);
    thread = new Thread(session, "listening to " + plan.link().text());
    thread.setDaemon(true);
  }

  /** Returns after the given time, with the port closed again. */
  void listen(Duration howLong) {
    thread.start();
    try {
      Thread.sleep(howLong.toMillis());
      session.stop();
      thread.join();
    } catch (InterruptedException e) {
      session.stop();
      Thread.currentThread().interrupt();
    }
  }

  /** Listens until the process ends. */
  void listenForEver() {
    session.run();
  }
}
