package feedwitness.acquire;

import feedwitness.quantity.TimeSource;
import feedwitness.wire.PortOpener;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * All sessions, a thread each. Changing the plan stops only wires that changed. Methods are called
 * from one thread at a time.
 */
public final class SessionPool implements AutoCloseable {
  private static final long PATIENCE_MILLIS = 5000;

  private final PortOpener opener;
  private final TimeSource ticks;
  private final SampleSink sink;
  private final Map<PortPlan, Running> running = new LinkedHashMap<>();

  private record Running(PortSession session, Thread thread) {}

  public SessionPool(PortOpener opener, TimeSource ticks, SampleSink sink) {
    this.opener = opener;
    this.ticks = ticks;
    this.sink = sink;
  }

  /** Makes exactly these wires run. */
  public synchronized void follow(List<PortPlan> plans) {
    Set<PortPlan> wanted = new HashSet<>(plans);
    List<Running> leaving = new ArrayList<>();
    running
        .entrySet()
        .removeIf(
            entry -> {
              if (wanted.contains(entry.getKey())) {
                return false;
              }
              leaving.add(entry.getValue());
              return true;
            });
    end(leaving);
    for (PortPlan plan : plans) {
      running.computeIfAbsent(plan, this::start);
    }
  }

  private Running start(PortPlan plan) {
    PortSession session = new PortSession(plan, opener, ticks, sink, WireObserver.NONE);
    Thread thread = new Thread(session, "wire " + plan.link().text());
    thread.setDaemon(true);
    thread.start();
    return new Running(session, thread);
  }

  private static void end(List<Running> leaving) {
    leaving.forEach(each -> each.session().stop());
    for (Running each : leaving) {
      try {
        each.thread().join(PATIENCE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  @Override
  public void close() {
    follow(List.of());
  }
}
