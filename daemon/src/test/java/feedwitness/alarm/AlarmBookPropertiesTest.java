package feedwitness.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** Whatever comes in whatever order, the life cycle keeps its promises. */
class AlarmBookPropertiesTest {
  private static final AlarmKey KEY = new AlarmKey("line", PointKinds.IN_AIR.code());

  private static final List<Presence> PRESENCES =
      List.of(Presence.ACTIVE, Presence.CLEAR, Presence.UNKNOWN);

  private static Stamp at(long second) {
    return new Stamp(2, second, second * 1_000_000_000L, second * 1000, true);
  }

  /** One deed a step, a few seconds apart. */
  private static List<AlarmEvent> deed(AlarmBook book, AlarmKind kind, int what, Stamp now) {
    Condition condition =
        Condition.plain("line", kind, PRESENCES.get(what % 3), "line: in air")
            .suppressed(what == 4 ? Optional.of("nothing runs") : Optional.empty());
    return switch (what) {
      case 0, 1, 2, 3, 4 -> book.report(condition, now);
      case 5 -> events(book.acknowledge(KEY, "Kim", "", now));
      case 6 -> events(book.shelve(KEY, now.wall().plusSeconds(30), "Kim", "", now));
      case 7 -> events(book.unshelve(KEY, "Kim", now));
      case 8 -> events(book.takeOut(KEY, "Kim", "", now));
      case 9 -> events(book.putBack(KEY, "Kim", "", now));
      case 10 -> events(book.reopen(KEY, "Kim", now));
      default -> book.tick(now);
    };
  }

  private static List<AlarmEvent> events(AlarmOutcome outcome) {
    return outcome instanceof AlarmOutcome.Done done ? done.events() : List.of();
  }

  @Property(tries = 500)
  void keepsItsPromises(
      @ForAll @Size(max = 120) List<@IntRange(max = 11) Integer> deeds,
      @ForAll Priority priority,
      @ForAll @IntRange(max = 20) int delay) {
    AlarmKind kind =
        PointKinds.IN_AIR.with(priority, Duration.ofSeconds(delay), Duration.ofSeconds(delay));
    AlarmBook book = new AlarmBook();
    Set<String> ids = new HashSet<>();
    List<AlarmEvent> told = new ArrayList<>();
    long second = 0;
    for (int what : deeds) {
      second += 1 + what;
      boolean counted = book.find(KEY).map(Standing::counts).orElse(true);
      for (AlarmEvent event : deed(book, kind, what, at(second))) {
        assertTrue(ids.add(event.id()), "an id is given twice");
        assertTrue(priority.needsAnswer() || !event.announces(), "a notice asks for an answer");
        told.add(event);
      }
      Optional<Standing> standing = book.find(KEY);
      if (standing.isPresent() && !standing.get().counts() && !counted) {
        assertFalse(standing.get().waits(), "what is set aside asks for an answer");
      }
      assertEquals(book.all(), AlarmBook.parse(book.toText()).all());
    }
    assertAlternates(told);
  }

  /** Raised, then cleared, then raised again: nothing is cleared twice in a row. */
  private static void assertAlternates(List<AlarmEvent> told) {
    Transition last = Transition.CLEARED;
    for (AlarmEvent event : told) {
      if (event.key().equals(KEY) && event.transition() == Transition.CLEARED) {
        assertNotEquals(Transition.CLEARED, last, "cleared what was not there");
      }
      if (event.key().equals(KEY)
          && (event.transition() == Transition.RAISED
              || event.transition() == Transition.CLEARED)) {
        last = event.transition();
      }
    }
  }

  @Property(tries = 200)
  void makesAtMostOneAlarmOfAnyDitheringWithinTheDeadband(
      @ForAll @Size(min = 2, max = 300) List<@IntRange(min = -49, max = 400) Integer> thousandths) {
    AlarmBook book = new AlarmBook();
    Limit limit = new Limit(2.4, 0.05, Limit.Side.ABOVE);
    AlarmKind kind = PointKinds.CONDUCTIVITY_HIGH.with(Priority.HIGH, Duration.ZERO, Duration.ZERO);
    AlarmKey key = new AlarmKey("line", kind.code());
    int raised = 0;
    for (int i = 0; i < thousandths.size(); i++) {
      double value = 2.4 + thousandths.get(i) / 1000.0;
      Presence presence = limit.judge(value, book.active(key));
      raised +=
          (int)
              book.report(Condition.plain("line", kind, presence, "high"), at(i)).stream()
                  .filter(event -> event.transition() == Transition.RAISED)
                  .count();
    }
    assertTrue(raised <= 1, () -> "raised more than once");
  }
}
