package feedwitness.acquire;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Sample;
import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;
import feedwitness.wire.PortOpener;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.function.Function;

/**
 * Runs sessions again on the answers of a tape: the same code as live, on threads of their own,
 * each going on only when the tape has something for it, the clock standing at that event. Takes as
 * long as the thinking takes. Used once, by one thread.
 */
public final class TapePlayer {
  private final List<TapeEvent> events;
  private final TapeClock clock;

  /**
   * Reads a tape.
   *
   * @throws IllegalArgumentException naming the line that cannot be read
   */
  public TapePlayer(List<String> lines) {
    this.events = TapeText.read(lines);
    this.clock = new TapeClock(TapeText.began(lines));
  }

  /** What samples must be stamped with. */
  public TimeSource clock() {
    return clock;
  }

  /**
   * Plays the whole tape.
   *
   * @param plans as they were when it was recorded
   * @param afterEach called on the caller's thread after each event was dealt with
   * @throws IllegalStateException if a session asks for something else than it did when the tape
   *     was recorded: plans or program differ
   */
  public void play(List<PortPlan> plans, SampleSink sink, Runnable afterEach) {
    List<Seat> seats = new ArrayList<>();
    for (PortPlan plan : plans) {
      seats.add(new Seat(plan, sink, clock));
    }
    try {
      seats.forEach(Seat::sitDown);
      for (int i = 0; i < events.size(); i++) {
        TapeEvent event = events.get(i);
        if (event.wire() < 1 || event.wire() > seats.size()) {
          throw new IllegalStateException(
              "event %d of the tape is for wire %d, but there are %d plans"
                  .formatted(i + 1, event.wire(), seats.size()));
        }
        clock.set(event.nanos(), event.wallMillis());
        seats.get(event.wire() - 1).handOver(event, i + 1);
        afterEach.run();
      }
    } finally {
      seats.forEach(Seat::standUp);
    }
  }

  /** A session and its turn. Its thread runs only between being handed an event and asking anew. */
  private static final class Seat implements PortOpener, Pause, Port, SampleSink {
    private static final long PATIENCE_MILLIS = 30_000;

    private final SampleSink sink;
    private final PortSession session;
    private final Thread thread;
    private TapeEvent event = NOTHING;
    private boolean asking;
    private boolean over;
    private String fault = "";

    private static final TapeEvent NOTHING =
        new TapeEvent(0, 0, 0, TapeEvent.Kind.RESTED, Octets.NONE, "");

    Seat(PortPlan plan, SampleSink sink, TimeSource clock) {
      this.sink = sink;
      this.session = new PortSession(plan, this, clock, this, WireObserver.NONE, this);
      this.thread = new Thread(session, "replayed wire " + plan.link().text());
      thread.setDaemon(true);
    }

    synchronized void sitDown() {
      thread.start();
      awaitAsking();
    }

    synchronized void handOver(TapeEvent next, int number) {
      event = next;
      asking = false;
      notifyAll();
      awaitAsking();
      if (!fault.isEmpty()) {
        throw new IllegalStateException("event %d of the tape: %s".formatted(number, fault));
      }
    }

    private void awaitAsking() {
      long deadline = System.nanoTime() + Duration.ofMillis(PATIENCE_MILLIS).toNanos();
      try {
        while (!asking && System.nanoTime() < deadline) {
          wait(100);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      if (!asking) {
        throw new IllegalStateException(thread.getName() + " does not come back");
      }
    }

    synchronized void standUp() {
      over = true;
      session.stop();
      notifyAll();
    }

    /** What the tape has next for this session; null when there will be nothing more. */
    private synchronized TapeEvent next() {
      asking = true;
      notifyAll();
      try {
        while (asking && !over) {
          wait();
        }
      } catch (InterruptedException e) {
        over = true;
        Thread.currentThread().interrupt();
      }
      return event;
    }

    private synchronized boolean isOver() {
      return over;
    }

    private synchronized void differ(String wanted, TapeEvent told) {
      fault = "the session wants to %s, the tape says '%s'".formatted(wanted, TapeText.write(told));
      over = true;
      session.stop();
    }

    @Override
    public Outcome open(LinkAddress link, SerialSettings settings) {
      TapeEvent told = next();
      if (isOver()) {
        return new Outcome.Refused(Why.FAILED, "the tape is over");
      }
      if (told.kind() == TapeEvent.Kind.OPENED) {
        return new Outcome.Opened(this);
      }
      if (told.kind().isRefusal()) {
        return new Outcome.Refused(told.kind().why(), told.words());
      }
      differ("open its wire", told);
      return new Outcome.Refused(Why.FAILED, "the tape differs");
    }

    @Override
    public Octets read(int timeoutMillis) throws PortLostException {
      TapeEvent told = wire();
      if (told.kind() != TapeEvent.Kind.READ) {
        differ("read", told);
        throw new PortLostException("the tape differs");
      }
      return told.octets();
    }

    @Override
    public void write(Octets octets) throws PortLostException {
      TapeEvent told = wire();
      if (told.kind() != TapeEvent.Kind.SENT || !told.octets().equals(octets)) {
        differ("send " + octets.toHex(), told);
        throw new PortLostException("the tape differs");
      }
    }

    private TapeEvent wire() throws PortLostException {
      TapeEvent told = next();
      if (isOver()) {
        throw new PortLostException("the tape is over");
      }
      if (told.kind() == TapeEvent.Kind.LOST) {
        throw new PortLostException(told.words());
      }
      return told;
    }

    @Override
    public boolean rest(Duration howLong, CountDownLatch stopped) {
      TapeEvent told = next();
      if (!isOver() && told.kind() != TapeEvent.Kind.RESTED) {
        differ("rest", told);
      }
      return !isOver();
    }

    @Override
    public synchronized void ended() {
      asking = true;
      notifyAll();
    }

    /** What was thrown away was never read, so the tape does not have it. */
    @Override
    public void discardInput() {}

    @Override
    public void close() {}

    /** After the tape, nothing a session says means anything. */
    @Override
    public void accept(Function<Stamp, Sample> atArrival) {
      accept(atArrival, List.of());
    }

    @Override
    public void accept(Function<Stamp, Sample> atArrival, List<Octets> messages) {
      if (!isOver()) {
        sink.accept(atArrival, messages);
      }
    }
  }
}
