package feedwitness.watch.drift;

import feedwitness.watch.drift.Movement.Moved;
import java.util.List;
import java.util.Optional;

/**
 * Finds irrigation events in what the line probe says, and makes one value of each: from when it
 * has settled until four minutes after the start. What stands in the line afterwards is the same
 * liquid and no news.
 */
final class EventFinder {
  private static final List<Phase> PHASES = List.of(Phase.values());
  private static final double SETTLED = 20;
  private static final double LONGEST_UNREST = 180;
  private static final double LENGTH = 240;
  private static final double RARE = 25;

  /** A contact that said nothing for so long is not gone by. */
  private static final double SILENT = 300;

  private final Movement movement = new Movement();
  private final Gatherer gatherer = new Gatherer();
  private Phase phase = Phase.RESTING;
  private double start;
  private long startWall;
  private double moved;
  private boolean warm;
  private int airy;
  private double last = Double.NaN;
  private double interval = 1;

  private double contactAt = Double.NEGATIVE_INFINITY;
  private boolean closed;

  private enum Phase {
    RESTING,
    UNREST,
    GATHERING
  }

  /** Whether an event is under way. */
  boolean busy() {
    return phase != Phase.RESTING;
  }

  /** Whether the temperature moved when the last event began: flow, rather than another liquid. */
  boolean warm() {
    return warm;
  }

  /** A reading as if in air: counts for the event, says nothing of the strength. */
  void air() {
    airy++;
  }

  /**
   * A flow or pump contact spoke. While it does, it alone says when water flows.
   *
   * @return the event that ends with it, if there was enough of it
   */
  Optional<LineEvent> contact(double now, long wallMillis, boolean flows) {
    boolean before = closed && now - contactAt <= SILENT;
    closed = flows;
    contactAt = now;
    if (flows && !before) {
      discard();
      return begin(now, wallMillis, Moved.WARMTH);
    }
    return !flows && phase != Phase.RESTING ? end() : Optional.empty();
  }

  /** Whether a contact says that nothing flows. */
  private boolean rests(double now) {
    return !closed && now - contactAt <= SILENT;
  }

  /** Takes a sound reading; an event when one is complete. */
  Optional<LineEvent> take(
      double now, long wallMillis, double log, double uncertainty, double celsius) {
    if (!Double.isNaN(last)) {
      interval = 0.9 * interval + 0.1 * (now - last);
    }
    last = now;
    Moved moves = movement.take(now, log, celsius);
    Moved what = rests(now) ? Moved.NOTHING : moves;
    Optional<LineEvent> event = Optional.empty();
    if (what != Moved.NOTHING) {
      event = begin(now, wallMillis, what);
    }
    if (phase == Phase.UNREST
        && (now - moved >= SETTLED || now - start >= LONGEST_UNREST)
        && what == Moved.NOTHING) {
      phase = Phase.GATHERING;
      gatherer.clear();
    }
    if (phase == Phase.GATHERING) {
      gatherer.add(log, uncertainty, celsius);
      if (now - start + interval / 2 >= LENGTH) {
        event = end();
      }
    }
    return event;
  }

  private Optional<LineEvent> begin(double now, long wallMillis, Moved what) {
    Optional<LineEvent> cut = phase == Phase.GATHERING ? end() : Optional.empty();
    if (phase == Phase.RESTING) {
      start = now;
      startWall = wallMillis;
      warm = false;
      phase = Phase.UNREST;
    }
    warm |= what == Moved.WARMTH;
    moved = now;
    return cut;
  }

  /** Ends the event under way; empty if there was too little of it. */
  Optional<LineEvent> end() {
    boolean enough = phase == Phase.GATHERING && gatherer.readings() >= (interval > RARE ? 2 : 5);
    phase = Phase.RESTING;
    int bubbles = airy;
    airy = 0;
    return enough
        ? Optional.of(
            new LineEvent(
                start,
                startWall,
                Math.exp(gatherer.middle()),
                gatherer.uncertainty(),
                gatherer.celsius(),
                gatherer.readings(),
                bubbles))
        : Optional.empty();
  }

  /** Readings stopped for a while: what is under way ends, and nothing is compared across. */
  Optional<LineEvent> pause() {
    movement.clear();
    last = Double.NaN;
    return end();
  }

  /** What is under way is not to be judged. */
  void discard() {
    phase = Phase.RESTING;
    airy = 0;
  }

  void write(StateWriter out) {
    movement.write(out);
    gatherer.write(out);
    out.choice(phase, PHASES).number(start).whole(startWall).number(moved).truth(warm);
    out.whole(airy).number(last).number(interval).number(contactAt).truth(closed);
  }

  void read(StateReader in) {
    movement.read(in);
    gatherer.read(in);
    phase = in.choice(PHASES);
    start = in.number();
    startWall = in.whole();
    moved = in.number();
    warm = in.truth();
    airy = in.count(Integer.MAX_VALUE);
    last = in.number();
    interval = in.number();
    contactAt = in.number();
    closed = in.truth();
  }
}
