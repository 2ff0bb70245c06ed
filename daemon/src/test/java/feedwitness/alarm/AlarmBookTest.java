package feedwitness.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AlarmBookTest {
  private static final Instant START = Instant.parse("2026-06-01T12:00:00Z");
  private static final AlarmKey HIGH = new AlarmKey("line", "conductivity-high");

  private AlarmBook book = new AlarmBook();
  private final List<AlarmEvent> told = new ArrayList<>();
  private boolean before;

  private static Stamp at(double seconds) {
    return new Stamp(
        4,
        (long) seconds,
        (long) (seconds * 1e9),
        START.toEpochMilli() + (long) (seconds * 1e3),
        true);
  }

  private static Condition condition(double value, Presence presence) {
    return new Condition(
        "line",
        PointKinds.CONDUCTIVITY_HIGH,
        presence,
        value,
        2.4,
        "mS/cm",
        "line: %.2f mS/cm is above the high limit 2.40 mS/cm".formatted(value),
        Optional.empty());
  }

  private void reads(double seconds, double milliSiemensPerCm) {
    Presence presence = new Limit(2.4, 0.05, Limit.Side.ABOVE).judge(milliSiemensPerCm, before);
    before = presence == Presence.UNKNOWN ? before : presence == Presence.ACTIVE;
    told.addAll(book.report(condition(milliSiemensPerCm, presence), at(seconds)));
  }

  private List<Transition> transitions() {
    return told.stream().map(AlarmEvent::transition).toList();
  }

  private Standing line() {
    return book.find(HIGH).orElseThrow();
  }

  private void raise() {
    reads(0, 2.86);
    reads(60, 2.86);
    assertEquals(State.UNACKNOWLEDGED, line().state());
  }

  @Test
  void raisesOnlyWhatLasts() {
    reads(0, 2.86);
    reads(59, 2.86);
    assertEquals(List.of(), told);
    reads(60, 2.86);
    assertEquals(List.of(Transition.RAISED), transitions());
    AlarmEvent raised = told.get(0);
    assertTrue(raised.announces());
    assertEquals("4-60-1", raised.id());
    assertEquals("line: 2.86 mS/cm is above the high limit 2.40 mS/cm", raised.words());
  }

  @Test
  void makesOneAlarmOfAValueDitheringOnTheLimit() {
    for (int s = 0; s < 3600; s++) {
      reads(s, s % 2 == 0 ? 2.41 : 2.39);
    }
    assertEquals(List.of(Transition.RAISED), transitions());
    assertEquals(State.UNACKNOWLEDGED, line().state());
  }

  @Test
  void makesOneAlarmOfAValueDitheringAcrossLimitAndDeadband() {
    reads(0, 2.5);
    for (int s = 60; s < 3600; s += 10) {
      reads(s, s % 20 == 0 ? 2.50 : 2.30);
    }
    assertEquals(List.of(Transition.RAISED), transitions());
  }

  @Test
  void countsNoTimeOfWhichNothingIsKnown() {
    reads(0, 2.86);
    reads(30, Double.NaN);
    reads(4000, 2.86);
    assertEquals(List.of(), told, "30 s were seen, 60 s are needed");
    reads(4030, 2.86);
    assertEquals(List.of(Transition.RAISED), transitions());
    reads(4031, Double.NaN);
    told.addAll(book.tick(at(9000)));
    assertEquals(State.UNACKNOWLEDGED, line().state(), "not seen is not gone");
  }

  @Test
  void raisesWhileNobodyReportsAnythingNew() {
    reads(0, 2.86);
    told.addAll(book.tick(at(59)));
    told.addAll(book.tick(at(60)));
    assertEquals(List.of(Transition.RAISED), transitions());
  }

  @Test
  void keepsWhatReturnedUntilSomebodyAnswers() {
    raise();
    reads(100, 2.0);
    reads(160, 2.0);
    assertEquals(State.RETURNED, line().state());
    assertTrue(line().waits());
    AlarmOutcome.Done done =
        assertInstanceOf(
            AlarmOutcome.Done.class, book.acknowledge(HIGH, "Kim", "injector reset", at(200)));
    assertEquals(State.NORMAL, done.now().state());
    assertEquals("Kim", done.events().get(0).who());
    assertEquals("injector reset", done.events().get(0).note());
  }

  @Test
  void takesAnAnswerBackForTenMinutes() {
    raise();
    book.acknowledge(HIGH, "Kim", "", at(70));
    assertInstanceOf(AlarmOutcome.Done.class, book.reopen(HIGH, "Kim", at(80)));
    assertEquals(State.UNACKNOWLEDGED, line().state());
    assertInstanceOf(AlarmOutcome.Refused.class, book.reopen(HIGH, "Kim", at(81)));

    book.acknowledge(HIGH, "Kim", "", at(90));
    reads(100, 2.0);
    reads(160, 2.0);
    assertEquals(State.NORMAL, line().state());
    book.reopen(HIGH, "Kim", at(170));
    assertEquals(State.RETURNED, line().state());

    book.acknowledge(HIGH, "Kim", "", at(200));
    AlarmOutcome.Refused late =
        assertInstanceOf(AlarmOutcome.Refused.class, book.reopen(HIGH, "Kim", at(801)));
    assertTrue(late.message().contains("10 min"), late.message());
  }

  @Test
  void isQuietWhileShelvedAndRaisesAgainWhatOutlastsTheShelf() {
    raise();
    Instant end = START.plusSeconds(3600);
    book.shelve(HIGH, end, "Kim", "flushing", at(70));
    reads(100, 2.0);
    reads(200, 2.0);
    reads(1000, 2.9);
    reads(1100, 2.9);
    assertEquals(List.of(Transition.RAISED), transitions());
    told.addAll(book.tick(at(3599)));
    told.addAll(book.tick(at(3600)));
    assertEquals(
        List.of(Transition.RAISED, Transition.UNSHELVED, Transition.RAISED), transitions());
    assertEquals(State.UNACKNOWLEDGED, line().state());
  }

  @Test
  void saysNothingOfWhatCameAndWentOnTheShelf() {
    raise();
    book.shelve(HIGH, START.plusSeconds(600), "Kim", "", at(70));
    reads(100, 2.0);
    reads(200, 2.0);
    told.addAll(book.tick(at(600)));
    assertEquals(State.NORMAL, line().state());
    assertEquals(List.of(Transition.RAISED, Transition.UNSHELVED), transitions());
  }

  @Test
  void refusesAShelfWithoutAnEndInSight() {
    raise();
    for (Instant end : List.of(START, START.plus(Duration.ofDays(8)))) {
      AlarmOutcome.Refused refused =
          assertInstanceOf(AlarmOutcome.Refused.class, book.shelve(HIGH, end, "Kim", "", at(70)));
      assertEquals("until", refused.field());
      assertTrue(refused.message().contains("7 days"), refused.message());
    }
  }

  @Test
  void staysOutOfServiceUntilSomebodyPutsItBack() {
    raise();
    book.takeOut(HIGH, "Kim", "probe at repair", at(70));
    told.addAll(book.tick(at(1_000_000)));
    assertFalse(line().counts());
    AlarmOutcome.Done back =
        assertInstanceOf(AlarmOutcome.Done.class, book.putBack(HIGH, "Kim", "", at(1_000_001)));
    assertEquals(
        List.of(Transition.IN_SERVICE, Transition.RAISED),
        back.events().stream().map(AlarmEvent::transition).toList());
  }

  @Test
  void doesNotCountWhatIsSuppressedByDesign() {
    Condition idle =
        condition(2.9, Presence.ACTIVE).suppressed(Optional.of("nothing runs on the line"));
    for (int s = 0; s < 600; s++) {
      told.addAll(book.report(idle, at(s)));
    }
    assertEquals(List.of(), told);
    told.addAll(book.report(condition(2.9, Presence.ACTIVE), at(600)));
    assertEquals(List.of(Transition.RAISED), transitions());
    told.addAll(book.report(idle, at(700)));
    assertEquals(List.of(Transition.RAISED, Transition.SUPPRESSED), transitions());
  }

  @Test
  void groupsAFloodAndSaysSo() {
    AlarmKind atOnce = PointKinds.NO_DATA.with(Priority.MEDIUM, Duration.ZERO, Duration.ZERO);
    for (int i = 0; i < 20; i++) {
      told.addAll(
          book.report(Condition.plain("point" + i, atOnce, Presence.ACTIVE, "gone"), at(i)));
    }
    List<AlarmEvent> announced = told.stream().filter(AlarmEvent::announces).toList();
    assertEquals(6, announced.size());
    assertEquals("service/alarm-flood", announced.get(5).key().text());
    assertEquals(15, told.stream().filter(AlarmEvent::grouped).count());
    told.addAll(book.tick(at(700)));
    assertEquals(
        State.RETURNED, book.find(new AlarmKey("service", "alarm-flood")).orElseThrow().state());
  }

  @Test
  void goesOnAfterARestartWhereItStopped() {
    raise();
    book.shelve(HIGH, START.plusSeconds(3600), "Kim", "tab\there, back\\slash\nline", at(70));
    told.addAll(
        book.report(Condition.plain("tank", PointKinds.NO_DATA, Presence.ACTIVE, "silent"), at(5)));
    AlarmBook again = AlarmBook.parse(book.toText());
    assertEquals(book.all(), again.all());
    assertEquals(book.toText(), again.toText());
    assertThrows(IllegalArgumentException.class, () -> AlarmBook.parse("alarms 2\n"));
    assertThrows(
        IllegalArgumentException.class,
        () -> AlarmBook.parse(book.toText().substring(0, book.toText().length() - 9)));
  }

  @Test
  void doesNotCountADelayAcrossARestart() {
    reads(0, 2.86);
    book = AlarmBook.parse(book.toText());
    Stamp rebooted = new Stamp(5, 1, 0, START.toEpochMilli() + 100_000, true);
    assertEquals(List.of(), book.report(condition(2.86, Presence.ACTIVE), rebooted));
  }

  @Test
  void forgetsWhatNoLongerExists() {
    raise();
    List<AlarmEvent> events = book.forget(key -> key.subject().equals("line"), at(70));
    assertEquals(Transition.CLEARED, events.get(0).transition());
    assertEquals(List.of(), book.all());
  }

  @Test
  void knowsNoAlarmThatWasNeverThere() {
    reads(0, 1.5);
    assertEquals(List.of(), book.all());
    assertInstanceOf(AlarmOutcome.NoSuchAlarm.class, book.acknowledge(HIGH, "Kim", "", at(1)));
  }
}
