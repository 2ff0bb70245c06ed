package feedwitness.acquire;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.TimeSource;
import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;
import feedwitness.wire.PortOpener;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;

/**
 * Runs sessions on real wires and writes down every answer they get, so that {@link TapePlayer} can
 * run them again. Sessions wait on their wires side by side but think one after the other, in the
 * order of the tape; {@link #clock()} stands at the event that is being thought about. Start once,
 * close once.
 */
public final class TapeRecorder implements AutoCloseable {
  private static final long PATIENCE_MILLIS = 5000;

  private final TimeSource real;
  private final long beganNanos;
  private final TapeClock clock;
  private final Consumer<String> lines;

  /** Held by the one session that is not waiting for the outside. */
  private final ReentrantLock turn = new ReentrantLock(true);

  private final List<PortSession> sessions = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();

  /**
   * {@code lines} is given the tape line by line, by one thread at a time.
   *
   * @param real clocks that the tape is stamped with
   */
  public TapeRecorder(TimeSource real, Consumer<String> lines) {
    this.real = real;
    this.lines = lines;
    this.beganNanos = real.monotonicNanos();
    long wallMillis = real.wall().toEpochMilli();
    this.clock = new TapeClock(wallMillis);
    TapeText.head(wallMillis).forEach(lines);
  }

  /** What samples must be stamped with. */
  public TimeSource clock() {
    return clock;
  }

  /** Starts a session a plan. */
  public void start(List<PortPlan> plans, PortOpener opener, SampleSink sink) {
    for (int i = 0; i < plans.size(); i++) {
      Tap tap = new Tap(i + 1, opener);
      sessions.add(new PortSession(plans.get(i), tap, clock, sink, WireObserver.NONE, tap));
    }
    for (PortSession session : sessions) {
      Thread thread = new Thread(session, "recorded wire");
      thread.setDaemon(true);
      threads.add(thread);
      thread.start();
    }
  }

  /** Ends the sessions; the tape is complete then. */
  @Override
  public void close() {
    sessions.forEach(PortSession::stop);
    for (Thread thread : threads) {
      try {
        thread.join(PATIENCE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  /** Between a session and the outside. */
  private final class Tap implements PortOpener, Pause {
    private final int wire;
    private final PortOpener opener;

    Tap(int wire, PortOpener opener) {
      this.wire = wire;
      this.opener = opener;
    }

    private void leave() {
      if (turn.isHeldByCurrentThread()) {
        turn.unlock();
      }
    }

    private void come(TapeEvent.Kind kind, Octets octets, String words) {
      turn.lock();
      long nanos = real.monotonicNanos() - beganNanos;
      long wallMillis = real.wall().toEpochMilli();
      clock.set(nanos, wallMillis);
      lines.accept(TapeText.write(new TapeEvent(wire, nanos, wallMillis, kind, octets, words)));
    }

    @Override
    public Outcome open(LinkAddress link, SerialSettings settings) {
      leave();
      Outcome outcome = opener.open(link, settings);
      if (outcome instanceof Outcome.Opened opened) {
        come(TapeEvent.Kind.OPENED, Octets.NONE, "");
        return new Outcome.Opened(new TappedPort(this, opened.port()));
      }
      Outcome.Refused refused = (Outcome.Refused) outcome;
      come(TapeEvent.Kind.of(refused.why()), Octets.NONE, refused.detail());
      return refused;
    }

    @Override
    public boolean rest(Duration howLong, CountDownLatch stopped) {
      leave();
      boolean goOn = Pause.REAL.rest(howLong, stopped);
      if (goOn) {
        come(TapeEvent.Kind.RESTED, Octets.NONE, "");
      }
      return goOn;
    }

    @Override
    public void ended() {
      leave();
    }
  }

  /** A real port whose answers are written down. */
  private static final class TappedPort implements Port {
    private final Tap tap;
    private final Port port;

    TappedPort(Tap tap, Port port) {
      this.tap = tap;
      this.port = port;
    }

    @Override
    public Octets read(int timeoutMillis) throws PortLostException {
      tap.leave();
      try {
        Octets octets = port.read(timeoutMillis);
        tap.come(TapeEvent.Kind.READ, octets, "");
        return octets;
      } catch (PortLostException e) {
        throw lost(e);
      }
    }

    @Override
    public void write(Octets octets) throws PortLostException {
      tap.leave();
      try {
        port.write(octets);
        tap.come(TapeEvent.Kind.SENT, octets, "");
      } catch (PortLostException e) {
        throw lost(e);
      }
    }

    private PortLostException lost(PortLostException e) {
      tap.come(TapeEvent.Kind.LOST, Octets.NONE, String.valueOf(e.getMessage()));
      return e;
    }

    @Override
    public void discardInput() {
      port.discardInput();
    }

    @Override
    public void close() {
      port.close();
    }
  }
}
