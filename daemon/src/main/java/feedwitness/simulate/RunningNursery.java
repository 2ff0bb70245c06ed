package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.tinylog.Logger;

/**
 * A nursery on real ports: one thread pushes the source probe's line every two simulated seconds,
 * but never faster than one in 20 ms; one answers on the bus, and tells a clock that waits. Both
 * bring the nursery up to its clock first. Safe to call from any thread.
 */
public final class RunningNursery implements AutoCloseable {
  private static final int PUSH_SECONDS = 2;
  private static final double FASTEST_MILLIS = 20;
  private static final double SLOWEST_MILLIS = 250;
  private static final int BUS_SILENCE_MILLIS = 20;
  private static final long GOODBYE_MILLIS = 10_000;

  private final Object lock = new Object();
  private final Nursery model;
  private final SimulatedClock clock;
  private final Map<Wire, WireDesk> desks = new EnumMap<>(Wire.class);
  private final CountDownLatch stop = new CountDownLatch(1);
  private final Thread pusher = new Thread(this::push, "nursery-source");
  private final Thread answerer = new Thread(this::answer, "nursery-bus");

  RunningNursery(Nursery model, SimulatedClock clock, Plug source, Plug bus) {
    this.model = model;
    this.clock = clock;
    desks.put(Wire.SOURCE, new WireDesk(source));
    desks.put(Wire.BUS, new WireDesk(bus));
    for (Thread thread : new Thread[] {pusher, answerer}) {
      thread.setDaemon(true);
      thread.start();
    }
  }

  /** Where the source probe is, as {@code LinkAddress.parse} reads it. */
  public String sourceLink() {
    return desk(Wire.SOURCE).text();
  }

  /** Where the bus is, likewise. */
  public String busLink() {
    return desk(Wire.BUS).text();
  }

  /** What is really so, now. */
  public Truth truth() {
    synchronized (lock) {
      model.advanceTo(clock.wall());
      return model.truth();
    }
  }

  /**
   * Makes something happen now, written as in a schedule without its time: {@code line in-air +2m}.
   *
   * @throws IllegalArgumentException saying what is wrong with it
   */
  public void begin(String deed) {
    synchronized (lock) {
      model.advanceTo(clock.wall());
      model.begin(deed);
    }
  }

  /** Pulls a cable at once, until {@link #replug}. */
  public void unplug(Wire wire) {
    desk(wire).pull(true, true);
  }

  /** Plugs it in again, unless the schedule has it pulled. */
  public void replug(Wire wire) {
    desk(wire).pull(false, scheduled(wire));
  }

  /** Makes the instruments on a cable say nothing, until turned off. */
  public void silence(Wire wire, boolean on) {
    desk(wire).silence(on);
  }

  /** Makes the instruments on a cable say rubbish instead, until turned off. */
  public void garble(Wire wire, boolean on) {
    desk(wire).garble(on);
  }

  /** Puts octets on a cable as they are. */
  public void write(Wire wire, Octets octets) {
    desk(wire).write(octets);
  }

  private WireDesk desk(Wire wire) {
    WireDesk desk = desks.get(wire);
    if (desk == null) {
      throw new IllegalStateException("no cable for " + wire);
    }
    return desk;
  }

  private boolean scheduled(Wire wire) {
    synchronized (lock) {
      return model.isUnplugged(wire);
    }
  }

  private void push() {
    WireDesk desk = desk(Wire.SOURCE);
    long told = Long.MIN_VALUE;
    double wanted = PUSH_SECONDS * 1000 / clock.speed() / 4;
    long pause = (long) Math.max(FASTEST_MILLIS, Math.min(SLOWEST_MILLIS, wanted));
    while (!stopped(pause)) {
      Octets line = Octets.NONE;
      boolean pulled;
      synchronized (lock) {
        model.advanceTo(clock.wall());
        pulled = model.isUnplugged(Wire.SOURCE);
        long turn = Math.floorDiv(model.now().getEpochSecond(), PUSH_SECONDS);
        if (turn != told) {
          told = turn;
          line = desk.isGarbled() ? model.burst() : model.sourceLine();
        }
      }
      desk.follow(pulled);
      desk.say(line);
    }
  }

  private void answer() {
    WireDesk desk = desk(Wire.BUS);
    BusEar ear = new BusEar();
    while (!stopped(0)) {
      Octets heard = desk.receive(BUS_SILENCE_MILLIS);
      if (heard.length() == 0) {
        answer(desk, ear.silence());
        boolean pulled = scheduled(Wire.BUS);
        if (pulled) {
          clock.heard(); // nothing to wait for
        }
        desk.follow(pulled);
      } else {
        ear.hear(heard).forEach(request -> answer(desk, request));
      }
    }
  }

  private void answer(WireDesk desk, Octets request) {
    if (request.length() == 0) {
      return;
    }
    Octets answer;
    synchronized (lock) {
      model.advanceTo(clock.wall());
      answer = desk.isGarbled() ? model.burst() : model.answer(request);
    }
    clock.heard();
    desk.say(answer);
  }

  private boolean stopped(long millis) {
    try {
      return stop.await(millis, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }

  /** Stops both threads and pulls both cables; links disappear. */
  @Override
  public void close() {
    stop.countDown();
    try {
      pusher.join(GOODBYE_MILLIS);
      answerer.join(GOODBYE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (pusher.isAlive() || answerer.isAlive()) {
      Logger.warn("the nursery did not stop within {} ms; its ports are closed", GOODBYE_MILLIS);
    }
    desks.values().forEach(WireDesk::close);
  }
}
