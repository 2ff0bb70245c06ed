package feedwitness.publish.message;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.site.MessagePlan;
import feedwitness.site.Site;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * Reaches people. What arrives is put on record, told when it should be, and tried until it is
 * delivered or given up; after a restart it goes on where the records end. Start once, close once.
 */
public final class Messages implements MessageDesk, AutoCloseable {
  /** Beyond it notices are dropped and counted: the teller must not wait. */
  static final int INBOX = 1000;

  private static final int RECORDS = EvidenceQuery.MOST;
  private static final Duration BETWEEN_TESTS = Duration.ofSeconds(10);
  private static final long STEP_MILLIS = 1_000;
  private static final long JOIN_MILLIS = 10_000;

  private final MessagePlan plan;
  private final Around around;
  private final List<Courier> couriers;
  private final Post post;
  private final BlockingQueue<Notice> inbox = new ArrayBlockingQueue<>(INBOX);
  private final BlockingQueue<Courier.Result> results = new ArrayBlockingQueue<>(INBOX);
  private final Semaphore bell = new Semaphore(0);
  private final Thread loop = new Thread(this::run, "messages");
  private volatile boolean stopping;
  private @Nullable Instant lastTest;
  private long dropped;

  /**
   * What it needs of the outside.
   *
   * @param stamp of a record made now
   * @param site the place as now configured
   * @param clock may run fast in a demo
   * @param random spreads retries
   */
  public record Around(
      EvidenceLedger ledger,
      EvidenceHistory evidence,
      History history,
      Supplier<Stamp> stamp,
      Supplier<Site> site,
      TimeSource clock,
      RandomGenerator random) {}

  /** Messages as planned; nothing is sent before {@link #start}. */
  public Messages(MessagePlan plan, Around around) {
    this(plan, around, new Channels(plan, around.clock()));
  }

  Messages(MessagePlan plan, Around around, Channels channels) {
    this.plan = plan;
    this.around = around;
    Site site = around.site().get();
    this.post =
        new Post(
            plan,
            site.zone(),
            new Letters(
                site.name(),
                new LetterText(site.name(), site.zone()),
                () -> java.util.UUID.randomUUID().toString()),
            channels.all(),
            around.random());
    this.couriers = channels.all().stream().map(each -> new Courier(each, this::came)).toList();
    loop.setDaemon(true);
  }

  /** Starts to tell. */
  public void start() {
    if (!couriers.isEmpty()) {
      loop.start();
    }
  }

  /** Takes a notice and returns at once; for any thread. Without any channel nothing happens. */
  public void tell(Notice notice) {
    if (couriers.isEmpty()) {
      return;
    }
    if (!inbox.offer(notice)) {
      synchronized (post) {
        if (dropped++ == 0) {
          Logger.warn("{} notices wait already; more are dropped", INBOX);
        }
      }
    }
    ring();
  }

  @Override
  public State state() {
    synchronized (post) {
      Now now = now();
      List<ChannelState> states = new ArrayList<>();
      for (Courier courier : couriers) {
        Lane lane = lane(courier);
        states.add(
            new ChannelState(
                lane.name(),
                courier.channel().leadsTo(),
                courier.channel().least(),
                lane.waiting(),
                lane.open(),
                lane.failures(),
                lane.nextAttempt(now),
                courier.testing(),
                lane.last()));
      }
      return new State(states, post.unanswered(), quietUntil(now));
    }
  }

  private Optional<Instant> quietUntil(Now now) {
    return plan.quiet()
        .filter(quiet -> now.dated() && quiet.quiet(LocalTime.ofInstant(now.wall(), zone())))
        .map(quiet -> quiet.end(now.wall(), zone()));
  }

  private java.time.ZoneId zone() {
    return around.site().get().zone();
  }

  @Override
  public TestOutcome test() {
    synchronized (post) {
      Instant steady = now().steady();
      if (couriers.isEmpty()) {
        return new TestOutcome.Refused(
            "there is nobody to send to; name a mail server or a webhook in the configuration");
      }
      boolean busy = couriers.stream().anyMatch(Courier::testing);
      if (stopping || busy || (lastTest != null && lastTest.plus(BETWEEN_TESTS).isAfter(steady))) {
        return new TestOutcome.Refused(
            "a test message was sent just now; try again in %d s"
                .formatted(BETWEEN_TESTS.toSeconds()));
      }
      lastTest = steady;
      for (Courier courier : couriers) {
        Letter letter = post.test(courier.channel(), now().wall());
        courier.send(letter, append(Records.message(letter)));
      }
      return new TestOutcome.Started(couriers.stream().map(c -> c.channel().name()).toList());
    }
  }

  /** Ends attempts that are under way (they will be made again), then stops. */
  @Override
  public void close() {
    stopping = true;
    couriers.forEach(Courier::close);
    ring();
    if (loop.isAlive()) {
      try {
        loop.join(JOIN_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private void run() {
    try {
      restore();
      while (!stopping) {
        step();
        pause();
      }
      couriers.forEach(Courier::awaitEnd);
      takeIn();
    } catch (RuntimeException e) {
      Logger.error(e, "no messages are sent any more; restart the service");
    }
  }

  private void restore() {
    List<Evidence> records =
        new ArrayList<>(
            around
                .evidence()
                .evidence(
                    EvidenceQuery.newest(
                        RECORDS, Records.NOTICE, Records.MESSAGE, Records.OUTCOME)));
    Collections.reverse(records);
    synchronized (post) {
      post.restore(records, now());
    }
  }

  /** Once around: in, compose, out. Never waits for a receiver. */
  private void step() {
    takeIn();
    daily();
    synchronized (post) {
      Now now = now();
      for (Lane lane : post.lanes()) {
        for (Letter old : lane.olderThan(plan.giveUpAfter(), now)) {
          settle(old, Records.GIVEN_UP, "not delivered within the time set", lane.failures());
        }
      }
      record(post.compose(now));
      for (Courier courier : couriers) {
        lane(courier).next(now).ifPresent(letter -> courier.send(letter, courier.onRecord(letter)));
      }
    }
  }

  private void takeIn() {
    synchronized (post) {
      Now now = now();
      for (Notice each = inbox.poll(); each != null; each = inbox.poll()) {
        if (post.arrived(each, now)) {
          put(Records.notice(each, post.tellers(each.urgency())));
        }
      }
      for (Courier.Result each = results.poll(); each != null; each = results.poll()) {
        took(each, now);
      }
    }
  }

  private void took(Courier.Result result, Now now) {
    Lane lane = lane(result.courier());
    Delivery delivery = result.delivery();
    boolean delivered = delivery instanceof Delivery.Delivered;
    if (!delivered) {
      Logger.warn("message by {}: {}", lane.name(), delivery.said());
    }
    int attempts = lane.failures() + 1;
    boolean settled = true;
    if (result.letter().kind() == Letter.Kind.TEST) {
      lane.tested(delivery, now);
    } else {
      settled = lane.came(result.letter(), delivery, now);
    }
    if (settled) {
      settle(
          result.letter(),
          delivered ? Records.DELIVERED : Records.GIVEN_UP,
          delivery.said(),
          attempts);
    }
  }

  private void settle(Letter letter, String result, String said, int attempts) {
    put(Records.outcome(letter, result, said, attempts));
  }

  /** Reads the history outside the lock: a day of readings takes a moment. */
  private void daily() {
    Now now = now();
    Optional<LocalDate> due;
    synchronized (post) {
      due = post.dailyDue(now);
    }
    due.ifPresent(
        day -> {
          List<DayFigures> figures =
              new Almanac(around.history(), around.evidence(), around.site().get()).of(day);
          synchronized (post) {
            record(post.daily(day, figures, now));
          }
        });
  }

  private void record(List<Letter> letters) {
    for (Letter letter : letters) {
      couriers.stream()
          .filter(courier -> courier.channel().name().equals(letter.channel()))
          .forEach(courier -> courier.recorded(letter, append(Records.message(letter))));
    }
  }

  /** What becomes of it is only logged. */
  private void put(EvidenceDraft draft) {
    CompletableFuture<Evidence> logged = append(draft);
    Logger.debug("on its way to the record: {}", logged);
  }

  private CompletableFuture<Evidence> append(EvidenceDraft draft) {
    return around
        .ledger()
        .append(around.stamp().get(), draft)
        .whenComplete(
            (record, failure) -> {
              if (failure != null) {
                Logger.warn("a message could not be put on record: {}", failure.getMessage());
              }
            });
  }

  private void came(Courier.Result result) {
    if (!results.offer(result)) {
      Logger.error("an outcome of {} was lost", result.letter().channel());
    }
    ring();
  }

  private Lane lane(Courier courier) {
    return post.lanes().stream()
        .filter(lane -> lane.name().equals(courier.channel().name()))
        .findFirst()
        .orElseThrow();
  }

  private Now now() {
    return new Now(
        around.clock().wall(),
        Instant.EPOCH.plusNanos(around.clock().monotonicNanos()),
        around.stamp().get().dated());
  }

  private void ring() {
    bell.release();
  }

  /** Until something happens, or a second has passed: a fast clock would outrun a longer wait. */
  private void pause() {
    try {
      boolean rung = bell.tryAcquire(STEP_MILLIS, TimeUnit.MILLISECONDS);
      if (rung) {
        bell.drainPermits();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      stopping = true;
    }
  }
}
