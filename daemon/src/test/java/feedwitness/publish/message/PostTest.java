package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.publish.message.Letter.Kind;
import feedwitness.publish.message.Notice.Change;
import feedwitness.site.MessagePlan;
import feedwitness.site.QuietHours;
import feedwitness.site.Urgency;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What is told when, without any server: the clock is moved by hand. */
class PostTest {
  private static final ZoneId LONDON = ZoneId.of("Europe/London");
  private static final Delivery TAKEN = new Delivery.Delivered("250 taken");
  private static final Delivery BUSY = new Delivery.Later("421 busy");

  private Instant wall = Instant.parse("2026-06-01T10:00:00Z");
  private int ids;
  private Optional<QuietHours> quiet = Optional.empty();
  private Urgency least = Urgency.NOTE;

  private Post post() {
    MessagePlan plan =
        new MessagePlan(
            Optional.empty(),
            List.of(),
            quiet,
            Duration.ofSeconds(30),
            Optional.of(Duration.ofMinutes(30)),
            Optional.of(LocalTime.of(7, 0)),
            Duration.ofDays(2));
    Letters letters =
        new Letters(
            "Quarry End Nursery",
            new LetterText("Quarry End Nursery", LONDON),
            () -> "letter-" + ids++);
    return new Post(plan, LONDON, letters, List.of(new Silent(least)), new SplittableRandom(7));
  }

  /** A channel that is only a name: these tests deliver nothing. */
  private record Silent(Urgency least) implements Channel {
    @Override
    public String name() {
      return "mail";
    }

    @Override
    public String leadsTo() {
      return "";
    }

    @Override
    public boolean json() {
      return false;
    }

    @Override
    public Delivery deliver(Letter letter) {
      return TAKEN;
    }

    @Override
    public void close() {}
  }

  private Now now() {
    return new Now(wall, wall, true);
  }

  private void pass(Duration duration) {
    wall = wall.plus(duration);
  }

  private Notice notice(String id, Urgency urgency, Change change) {
    return new Notice(
        id, "alarm-of-" + id.split("-", -1)[0], "line", urgency, change, "title " + id, "", wall);
  }

  private List<Letter> sent(Post post, Delivery delivery) {
    post.compose(now());
    List<Letter> sent = new ArrayList<>();
    Lane lane = post.lanes().get(0);
    for (Optional<Letter> next = lane.next(now()); next.isPresent(); next = lane.next(now())) {
      sent.add(next.get());
      lane.came(next.get(), delivery, now());
    }
    return sent;
  }

  @Test
  void whatBelongsTogetherComesInOneMessage() {
    Post post = post();
    for (int i = 0; i < 5; i++) {
      post.arrived(notice("a" + i, Urgency.MEDIUM, Change.RAISED), now());
      pass(Duration.ofSeconds(4));
      assertEquals(List.of(), sent(post, TAKEN));
    }
    pass(Duration.ofSeconds(10));
    List<Letter> sent = sent(post, TAKEN);
    assertEquals(1, sent.size());
    assertTrue(sent.get(0).subject().endsWith("(and 4 more)"), sent.get(0).subject());
    for (int i = 0; i < 5; i++) {
      assertTrue(sent.get(0).body().contains("title a" + i));
    }
  }

  @Test
  void aStormOfAnHourMakesFewMessages() {
    Post post = post();
    int messages = 0;
    for (int i = 0; i < 720; i++) {
      post.arrived(notice("a" + i, Urgency.NOTE, Change.NOTED), now());
      pass(Duration.ofSeconds(5));
      messages += sent(post, TAKEN).size();
    }
    assertTrue(messages >= 3 && messages <= 9, () -> "messages in an hour of storm");
  }

  @Test
  void theSameEventIsToldOnceHoweverOftenItArrives() {
    Post post = post();
    assertTrue(post.arrived(notice("a", Urgency.HIGH, Change.RAISED), now()));
    assertFalse(post.arrived(notice("a", Urgency.HIGH, Change.RAISED), now()));
    pass(Duration.ofMinutes(1));
    assertEquals(1, sent(post, TAKEN).size());
    assertFalse(post.arrived(notice("a", Urgency.HIGH, Change.RAISED), now()));
    pass(Duration.ofMinutes(1));
    assertEquals(0, sent(post, TAKEN).size());
  }

  @Test
  void anOutageOfADayEndsInTwoMessages() {
    Post post = post();
    List<Letter> tried = new ArrayList<>();
    for (int hour = 0; hour < 24; hour++) {
      post.arrived(notice("a" + hour, Urgency.NOTE, Change.NOTED), now());
      for (int minute = 0; minute < 60; minute++) {
        pass(Duration.ofMinutes(1));
        tried.addAll(sent(post, BUSY));
      }
    }
    assertEquals(1, tried.stream().map(Letter::id).distinct().count());
    assertTrue(tried.size() > 24 * 4 && tried.size() < 24 * 9, () -> tried.size() + " attempts");
    pass(Duration.ofMinutes(20));
    List<Letter> after = new ArrayList<>(sent(post, TAKEN));
    pass(Duration.ofMinutes(20));
    after.addAll(sent(post, TAKEN));
    assertEquals(2, after.size());
    assertTrue(after.get(1).body().contains("title a23"), after.get(1).body());
  }

  @Test
  void aRefusedMessageDoesNotHoldUpTheNext() {
    Post post = post();
    post.arrived(notice("a", Urgency.LOW, Change.RAISED), now());
    pass(Duration.ofMinutes(1));
    assertEquals(1, sent(post, new Delivery.Refused("554")).size());
    post.arrived(notice("b", Urgency.LOW, Change.RAISED), now());
    pass(Duration.ofMinutes(1));
    assertEquals(1, sent(post, TAKEN).size());
  }

  @Test
  void whereSomebodyHasToMendSomethingItIsTriedRarely() {
    Post post = post();
    post.arrived(notice("a", Urgency.NOTE, Change.NOTED), now());
    int attempts = 0;
    for (int minute = 0; minute < 60; minute++) {
      pass(Duration.ofMinutes(1));
      attempts += sent(post, new Delivery.Misconfigured("535 wrong password")).size();
    }
    assertTrue(attempts >= 4 && attempts <= 8, attempts + " attempts in an hour");
  }

  @Test
  void theNightIsForWhatIsUrgent() {
    quiet = Optional.of(new QuietHours(LocalTime.of(21, 0), LocalTime.of(6, 0), Urgency.HIGH));
    wall = Instant.parse("2026-06-01T22:00:00Z");
    Post post = post();
    post.arrived(notice("a", Urgency.LOW, Change.RAISED), now());
    pass(Duration.ofMinutes(20));
    assertEquals(List.of(), sent(post, TAKEN));
    post.arrived(notice("b", Urgency.HIGH, Change.RAISED), now());
    pass(Duration.ofMinutes(2));
    List<Letter> urgent = sent(post, TAKEN);
    assertEquals(1, urgent.size());
    assertEquals(Urgency.HIGH, urgent.get(0).urgency());
    assertTrue(urgent.get(0).body().contains("title a"), "what waits comes along");
    post.arrived(notice("c", Urgency.NOTE, Change.NOTED), now());
    pass(Duration.ofMinutes(3));
    assertEquals(List.of(), sent(post, TAKEN));
    wall = Instant.parse("2026-06-02T05:00:30Z");
    assertEquals(1, sent(post, TAKEN).size());
  }

  @Test
  void anUrgentMessageOvertakesOneThatFailedBeforeTheNight() {
    quiet = Optional.of(new QuietHours(LocalTime.of(21, 0), LocalTime.of(6, 0), Urgency.HIGH));
    wall = Instant.parse("2026-06-01T19:58:00Z");
    Post post = post();
    post.arrived(notice("a", Urgency.NOTE, Change.NOTED), now());
    pass(Duration.ofMinutes(1));
    assertEquals(1, sent(post, BUSY).size());
    pass(Duration.ofHours(1));
    post.arrived(notice("b", Urgency.HIGH, Change.RAISED), now());
    pass(Duration.ofMinutes(2));
    List<Letter> sent = sent(post, TAKEN);
    assertEquals(1, sent.size());
    assertEquals(Urgency.HIGH, sent.get(0).urgency());
  }

  @Test
  void anAlarmNobodyAnswersIsToldThreeTimesMore() {
    Post post = post();
    post.arrived(notice("a", Urgency.MEDIUM, Change.RAISED), now());
    List<Letter> sent = new ArrayList<>();
    for (int minute = 0; minute < 300; minute++) {
      pass(Duration.ofMinutes(1));
      sent.addAll(sent(post, TAKEN));
    }
    assertEquals(
        List.of(Kind.ALARMS, Kind.ESCALATION, Kind.ESCALATION, Kind.ESCALATION),
        sent.stream().map(Letter::kind).toList());
    assertTrue(sent.get(1).subject().contains("Nobody has answered"), sent.get(1).subject());
  }

  @Test
  void anAnswerOrTheEndOfTheAlarmIsEnough() {
    for (Change change : List.of(Change.ACKNOWLEDGED, Change.CLEARED)) {
      Post post = post();
      post.arrived(notice("a-1", Urgency.MEDIUM, Change.RAISED), now());
      pass(Duration.ofMinutes(1));
      sent(post, TAKEN);
      post.arrived(notice("a-2", Urgency.MEDIUM, change), now());
      pass(Duration.ofMinutes(5));
      assertEquals(change == Change.CLEARED ? 1 : 0, sent(post, TAKEN).size());
      pass(Duration.ofHours(2));
      assertEquals(List.of(), sent(post, TAKEN));
      assertEquals(0, post.unanswered());
    }
  }

  @Test
  void anAnswerWhileTheNightHoldsItBackStopsTheReminder() {
    quiet = Optional.of(new QuietHours(LocalTime.of(21, 0), LocalTime.of(6, 0), Urgency.HIGH));
    wall = Instant.parse("2026-06-01T19:50:00Z");
    Post post = post();
    post.arrived(notice("a-1", Urgency.LOW, Change.RAISED), now());
    pass(Duration.ofMinutes(1));
    assertEquals(1, sent(post, TAKEN).size());
    pass(Duration.ofHours(1));
    assertEquals(List.of(), sent(post, TAKEN));
    post.arrived(notice("a-2", Urgency.LOW, Change.ACKNOWLEDGED), now());
    wall = Instant.parse("2026-06-02T06:00:00Z");
    assertEquals(List.of(), sent(post, TAKEN));
  }

  @Test
  void aChannelForUrgentThingsTellsNothingElse() {
    least = Urgency.HIGH;
    Post post = post();
    post.arrived(notice("a", Urgency.MEDIUM, Change.RAISED), now());
    assertEquals(List.of(), post.tellers(Urgency.MEDIUM));
    pass(Duration.ofMinutes(1));
    assertEquals(List.of(), sent(post, TAKEN));
  }

  @Test
  void moreThanAnybodyCanReadIsCounted() {
    Post post = post();
    for (int i = 0; i < 1_200; i++) {
      post.arrived(notice("a" + i, Urgency.NOTE, Change.NOTED), now());
    }
    pass(Duration.ofMinutes(1));
    Letter letter = sent(post, TAKEN).get(0);
    assertTrue(letter.body().contains("And 1140 more"), letter.body());
    assertTrue(letter.body().length() < 20_000);
  }

  @Test
  void theDailyNoteIsDueOnceADayAndNotOnTheFirst() {
    Post post = post();
    assertEquals(Optional.empty(), post.dailyDue(now()));
    wall = Instant.parse("2026-06-02T05:59:59Z");
    assertEquals(Optional.empty(), post.dailyDue(now()));
    wall = Instant.parse("2026-06-02T06:00:00Z");
    assertEquals(Optional.of(LocalDate.of(2026, 6, 1)), post.dailyDue(now()));
    post.daily(LocalDate.of(2026, 6, 1), List.of(), now());
    assertEquals(Optional.empty(), post.dailyDue(now()));
    wall = Instant.parse("2026-06-05T11:00:00Z");
    assertEquals(Optional.of(LocalDate.of(2026, 6, 4)), post.dailyDue(now()));
    assertEquals(
        Optional.empty(), post.dailyDue(new Now(wall, wall, false)), "an unset clock has no days");
  }

  @Test
  void aMessageIsGivenUpAfterTheTimeSetHoweverTheClockJumps() {
    Post post = post();
    wall = Instant.parse("1970-01-01T00:01:00Z");
    Now early = new Now(wall, wall, false);
    post.arrived(notice("a", Urgency.NOTE, Change.NOTED), early);
    Now composed = new Now(wall, wall.plusSeconds(60), false);
    post.compose(composed);
    Lane lane = post.lanes().get(0);
    Now set = new Now(Instant.parse("2026-06-01T10:00:00Z"), wall.plusSeconds(120), true);
    assertEquals(List.of(), lane.olderThan(Duration.ofDays(2), set));
    Now late = new Now(Instant.parse("2026-06-04T10:00:00Z"), wall.plus(Duration.ofDays(3)), true);
    assertEquals(1, lane.olderThan(Duration.ofDays(2), late).size());
  }

  @Test
  void nothingFromElsewhereEndsALineOfTheSubject() {
    Post post = post();
    post.arrived(
        new Notice(
            "a",
            "a",
            "line",
            Urgency.HIGH,
            Change.RAISED,
            "low\r\nBcc: everybody@quarry-end.example",
            "",
            wall),
        now());
    pass(Duration.ofMinutes(1));
    String subject = sent(post, TAKEN).get(0).subject();
    assertFalse(subject.contains("\n") || subject.contains("\r"), subject);
  }
}
