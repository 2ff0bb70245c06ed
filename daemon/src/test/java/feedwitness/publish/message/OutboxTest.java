package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.publish.message.Notice.Change;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.site.MessagePlan;
import feedwitness.site.Site;
import feedwitness.site.Urgency;
import feedwitness.site.WebhookRoute.Reach;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The outbox on a real store, with a real receiver, across restarts. */
@Timeout(120)
class OutboxTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Site SITE =
      new Site("Quarry End Nursery", ZoneId.of("Europe/London"), List.of());

  @TempDir Path folder;
  private Path secret = Path.of("");
  private final AtomicLong ahead = new AtomicLong();
  private volatile int status = 200;
  private final List<JsonNode> taken = new CopyOnWriteArrayList<>();
  private final List<String> ids = new CopyOnWriteArrayList<>();

  @BeforeEach
  void writeSecret() throws Exception {
    secret = Bench.secret(folder, Bench.SECRET);
  }

  /** Runs as the machine's, and can be put forward. */
  private TimeSource clock() {
    return new TimeSource() {
      @Override
      public long monotonicNanos() {
        return System.nanoTime() + ahead.get();
      }

      @Override
      public Instant wall() {
        return Instant.now().plusNanos(ahead.get());
      }
    };
  }

  private void pass(Duration duration) {
    ahead.addAndGet(duration.toNanos());
  }

  private Counter receiver() throws IOException {
    return new Counter(
        guest -> {
          String line = guest.hear();
          int length = 0;
          String id = "";
          while (!line.isEmpty()) {
            if (line.startsWith("Content-Length: ")) {
              length = Integer.parseInt(line.substring(16));
            }
            if (line.startsWith("Idempotency-Key: ")) {
              id = line.substring(17);
            }
            line = guest.hear();
          }
          JsonNode body = JSON.readTree(guest.hear(length));
          ids.add(id);
          if (status == 200) {
            taken.add(body);
          }
          guest.say("HTTP/1.1 " + status + " So", "Content-Length: 0", "");
        });
  }

  private H2Ledger ledger() {
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                folder.resolve("data"),
                Duration.ofSeconds(1),
                StoreSettings.DEFAULT_QUEUE,
                20_000_000,
                Optional.empty()),
            TimeSource.system());
    return assertInstanceOf(LedgerOpening.Opened.class, opening, opening::toString).ledger();
  }

  private Messages messages(H2Ledger ledger, EvidenceLedger record, int port) {
    MessagePlan plan =
        new MessagePlan(
            Optional.empty(),
            List.of(
                Bench.hook(
                    "http://127.0.0.1:" + port + "/", secret, Reach.LOOPBACK, Optional.empty())),
            Optional.empty(),
            Duration.ofSeconds(1),
            Optional.of(Duration.ofMinutes(30)),
            Optional.empty(),
            Duration.ofDays(2));
    TimeSource clock = clock();
    Messages messages =
        new Messages(
            plan,
            new Messages.Around(
                record,
                ledger,
                ledger,
                () ->
                    new Stamp(
                        ledger.boot(),
                        0,
                        clock.monotonicNanos(),
                        clock.wall().toEpochMilli(),
                        true),
                () -> SITE,
                clock,
                new SplittableRandom(7)));
    messages.start();
    return messages;
  }

  private Notice notice(String id, Change change) {
    return new Notice(
        id,
        "line/conductivity-low",
        "line",
        Urgency.MEDIUM,
        change,
        "line: 0.98 mS/cm is below the low limit 1.20 mS/cm",
        "check the injector and the stock barrel",
        clock().wall());
  }

  private static List<Evidence> records(H2Ledger ledger, String kind) {
    return ledger.evidence(EvidenceQuery.newest(100, kind));
  }

  @Test
  void whatIsToldArrivesOnceAndStandsOnRecord() throws Exception {
    try (Counter receiver = receiver();
        H2Ledger ledger = ledger();
        Messages messages = messages(ledger, ledger, receiver.port())) {
      messages.tell(notice("1-17-1", Change.RAISED));
      messages.tell(notice("1-17-1", Change.RAISED));
      Bench.await("taken", () -> taken.size() == 1);
      Bench.await("on record", () -> records(ledger, Records.OUTCOME).size() == 1);
      JsonNode body = taken.get(0);
      assertEquals("alarms", body.get("kind").asText());
      assertEquals("medium", body.get("priority").asText());
      assertEquals("line", body.at("/notices/0/subject").asText());
      assertEquals("raised", body.at("/notices/0/change").asText());
      assertEquals(ids.get(0), body.get("id").asText());
      Evidence outcome = records(ledger, Records.OUTCOME).get(0);
      assertEquals(Records.DELIVERED, outcome.field("result"));
      assertEquals(body.get("id").asText(), outcome.field("message"));
      String all = ledger.evidence(EvidenceQuery.newest(100)).toString();
      assertFalse(all.contains(Bench.SECRET), all);
      assertEquals(1, messages.state().unanswered());
    }
    Bench.noThreadIsLeft();
  }

  @Test
  void anOutageAndARestartLoseNothingAndRepeatNothing() throws Exception {
    status = 503;
    try (Counter receiver = receiver()) {
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, ledger, receiver.port())) {
        messages.tell(notice("1-17-1", Change.RAISED));
        Bench.await("tried", () -> ids.size() == 1);
        Bench.await("seen", () -> messages.state().channels().get(0).failures() == 1);
        messages.tell(notice("1-20-1", Change.CLEARED));
        Bench.await("on record", () -> records(ledger, Records.NOTICE).size() == 2);
      }
      status = 200;
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, ledger, receiver.port())) {
        messages.tell(notice("1-17-1", Change.RAISED));
        Bench.await("both taken", () -> taken.size() == 2);
        assertEquals(ids.get(0), ids.get(1), "the same message under the same name");
        assertEquals("1-17-1", taken.get(0).at("/notices/0/id").asText());
        assertEquals("1-20-1", taken.get(1).at("/notices/0/id").asText());
        Bench.await("on record", () -> records(ledger, Records.OUTCOME).size() == 2);
      }
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, ledger, receiver.port())) {
        messages.tell(notice("1-30-1", Change.NOTED));
        Bench.await("taken", () -> taken.size() == 3);
        assertEquals("1-30-1", taken.get(2).at("/notices/0/id").asText());
        assertEquals(1, taken.get(2).get("notices").size());
      }
    }
  }

  /** Power fails between the receiver's answer and the record of it. */
  private static EvidenceLedger losingOutcomes(H2Ledger ledger) {
    return new EvidenceLedger() {
      @Override
      public CompletableFuture<Evidence> append(Stamp at, EvidenceDraft draft) {
        return draft.kind().equals(Records.OUTCOME)
            ? CompletableFuture.failedFuture(new IOException("the power failed"))
            : ledger.append(at, draft);
      }

      @Override
      public void keepState(String name, String text) {
        ledger.keepState(name, text);
      }
    };
  }

  @Test
  void aCrashBetweenDeliveryAndRecordRepeatsUnderTheSameName() throws Exception {
    try (Counter receiver = receiver()) {
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, losingOutcomes(ledger), receiver.port())) {
        messages.tell(notice("1-17-1", Change.RAISED));
        Bench.await("taken", () -> messages.state().channels().get(0).last().isPresent());
      }
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, ledger, receiver.port())) {
        Bench.await("repeated", () -> ids.size() == 2);
        assertEquals(ids.get(0), ids.get(1));
        assertEquals(taken.get(0), taken.get(1));
        Bench.await("on record", () -> records(ledger, Records.OUTCOME).size() == 1);
        assertEquals(0, messages.state().channels().get(0).open());
      }
    }
  }

  @Test
  void aLedgerThatCannotWriteKeepsNoAlarmFromPeople() throws Exception {
    try (Counter receiver = receiver();
        H2Ledger ledger = ledger();
        Messages messages =
            messages(
                ledger,
                new EvidenceLedger() {
                  @Override
                  public CompletableFuture<Evidence> append(Stamp at, EvidenceDraft draft) {
                    return CompletableFuture.failedFuture(new IOException("the disk is full"));
                  }

                  @Override
                  public void keepState(String name, String text) {}
                },
                receiver.port())) {
      messages.tell(notice("1-17-1", Change.RAISED));
      Bench.await("taken", () -> taken.size() == 1);
    }
  }

  @Test
  void remindersGoOnAfterARestartWhereTheyStopped() throws Exception {
    try (Counter receiver = receiver()) {
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, ledger, receiver.port())) {
        messages.tell(notice("1-17-1", Change.RAISED));
        Bench.await("taken", () -> taken.size() == 1);
        pass(Duration.ofMinutes(31));
        Bench.await("told again", () -> taken.size() == 2);
        Bench.await("on record", () -> records(ledger, Records.OUTCOME).size() == 2);
      }
      try (H2Ledger ledger = ledger();
          Messages messages = messages(ledger, ledger, receiver.port())) {
        pass(Duration.ofMinutes(30));
        Bench.await("told again", () -> taken.size() == 3);
        assertEquals(1, taken.get(1).at("/notices/0/unanswered").asInt());
        assertEquals(2, taken.get(2).at("/notices/0/unanswered").asInt());
        assertEquals("escalation", taken.get(2).get("kind").asText());
        messages.tell(notice("1-50-1", Change.ACKNOWLEDGED));
        Bench.await("answered", () -> messages.state().unanswered() == 0);
      }
    }
  }

  @Test
  void theTestButtonTriesAtOnceAndIsNotTriedAgain() throws Exception {
    status = 404;
    try (Counter receiver = receiver();
        H2Ledger ledger = ledger();
        Messages messages = messages(ledger, ledger, receiver.port())) {
      assertInstanceOf(MessageDesk.TestOutcome.Started.class, messages.test());
      assertInstanceOf(MessageDesk.TestOutcome.Refused.class, messages.test());
      Bench.await("told", () -> messages.state().channels().get(0).last().isPresent());
      MessageDesk.ChannelState state = messages.state().channels().get(0);
      assertTrue(state.last().orElseThrow().said().contains("404"));
      assertEquals(0, state.open());
      Bench.await("on record", () -> records(ledger, Records.OUTCOME).size() == 1);
      assertEquals(Records.GIVEN_UP, records(ledger, Records.OUTCOME).get(0).field("result"));
      pass(Duration.ofSeconds(11));
      status = 200;
      assertInstanceOf(MessageDesk.TestOutcome.Started.class, messages.test());
      Bench.await("taken", () -> taken.size() == 1);
      assertEquals("test", taken.get(0).get("kind").asText());
    }
  }

  @Test
  void aStopDoesNotWaitForAReceiverThatHangs() throws Exception {
    try (Counter receiver = new Counter(Counter.Guest::hang);
        H2Ledger ledger = ledger()) {
      try (Messages messages = messages(ledger, ledger, receiver.port())) {
        messages.tell(notice("1-17-1", Change.RAISED));
        Bench.await("knocked", () -> receiver.served() == 1);
      }
      Bench.noThreadIsLeft();
      assertEquals(0, records(ledger, Records.OUTCOME).size(), "it will be tried again");
    }
  }

  @Test
  void withoutChannelsNothingIsKeptAndTheTestSaysWhy() throws Exception {
    try (H2Ledger ledger = ledger();
        Messages messages =
            new Messages(
                MessagePlan.NONE,
                new Messages.Around(
                    ledger,
                    ledger,
                    ledger,
                    () -> new Stamp(ledger.boot(), 0, 0, 0, false),
                    () -> SITE,
                    clock(),
                    new SplittableRandom(7)))) {
      messages.start();
      messages.tell(notice("1-17-1", Change.RAISED));
      assertInstanceOf(MessageDesk.TestOutcome.Refused.class, messages.test());
      assertEquals(List.of(), messages.state().channels());
      assertEquals(List.of(), records(ledger, Records.NOTICE));
    }
  }
}
