package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Whatever people do at a probe, in whatever order, nothing is lost and nothing throws. */
class CheckDeskPropertiesTest {
  private static final int DEEDS = 60;

  @Property(tries = 200)
  void anyDeedsLeaveRecordsThatAFreshDeskUnderstands(@ForAll long seed) {
    Random random = new Random(seed);
    Bench bench = new Bench(seed, Bench.SUNDAY);
    bench.gain = 0.7 + 0.4 * random.nextDouble();
    CheckDesk desk = desk();
    List<CheckEvidence> kept = new ArrayList<>();
    for (int i = 0; i < DEEDS; i++) {
      deed(desk, bench, random, i, kept);
    }
    assertEquals(desk.evidence(), kept);
    assertRoundsInOrder(kept);

    List<CheckEvidence> read =
        kept.stream()
            .map(one -> CheckEvidence.read(one.kind(), one.toFields()).orElseThrow())
            .toList();
    CheckDesk again = desk();
    assertEquals(List.of(), again.resume(read, bench.now()));
    assertEquals(
        desk.view(Bench.TANK).map(view -> List.of(view.round(), view.verdict(), view.results())),
        again.view(Bench.TANK).map(view -> List.of(view.round(), view.verdict(), view.results())));
    assertEquals(desk.suppressed(Bench.TANK), again.suppressed(Bench.TANK));
    assertEquals(desk.history(Bench.TANK), again.history(Bench.TANK));
  }

  private static CheckDesk desk() {
    return new CheckDesk(
        Bench.SHELF, CheckLimits.USUAL, subject -> Optional.empty(), () -> Bench.ZONE);
  }

  private static void deed(
      CheckDesk desk, Bench bench, Random random, int i, List<CheckEvidence> kept) {
    bench.wait(Duration.ofSeconds(1 + random.nextInt(30)));
    When now = bench.now();
    switch (random.nextInt(12)) {
      case 0 -> {
        CheckRequest.Answer answer =
            desk.begin(
                Bench.request(
                    Bench.instrument(desk.history(Bench.TANK).curve(), false, Double.NaN),
                    "tank-" + i),
                now);
        if (answer instanceof CheckRequest.Begun begun) {
          kept.add(begun.evidence());
        }
      }
      case 1 -> keep(desk.act(Bench.TANK, s -> s.cleaned("a", "brush", now), now), kept);
      case 2 -> keep(desk.act(Bench.TANK, s -> s.adjust("a", "a" + i, now), now), kept);
      case 3 -> keep(desk.act(Bench.TANK, s -> s.reallyThat(now), now), kept);
      case 4 -> {
        if (random.nextInt(4) == 0) {
          keep(desk.act(Bench.TANK, s -> s.finish("a", now), now), kept);
        }
      }
      case 5 -> {
        if (random.nextInt(6) == 0) {
          keep(desk.act(Bench.TANK, s -> s.abandon("a", "rain", now), now), kept);
        }
      }
      case 6 -> kept.addAll(desk.tick(now));
      case 7 -> keep(desk.undo(Bench.TANK, "u" + i, "a", now, Optional.empty()), kept);
      default -> look(desk, bench, random, kept);
    }
  }

  /** Rinses, immerses and lets it settle, in the right bottle nine times out of ten. */
  private static void look(CheckDesk desk, Bench bench, Random random, List<CheckEvidence> kept) {
    keep(desk.act(Bench.TANK, s -> s.rinsed(bench.now()), bench.now()), kept);
    keep(desk.act(Bench.TANK, s -> s.immersed(bench.now()), bench.now()), kept);
    boolean low = random.nextInt(10) == 0 || !standard(desk).contains("0.02");
    double value = bench.indicates(low ? Bench.LOW : Bench.MIDDLE);
    for (int second = 0; second <= 60; second++) {
      bench.wait(Duration.ofSeconds(1));
      kept.addAll(
          desk.reading(Bench.TANK, new ProbeReading(bench.stamp(), value, bench.celsius), value));
    }
  }

  private static String standard(CheckDesk desk) {
    return desk.view(Bench.TANK).flatMap(CheckView::standard).orElse("");
  }

  private static void keep(CheckReply reply, List<CheckEvidence> kept) {
    assertFalse(reply.words().isBlank() && !reply.accepted());
    assertTrue(reply.accepted() || reply.evidence().isEmpty());
    kept.addAll(reply.evidence());
  }

  /** Within a check: as found before after cleaning before as left. */
  private static void assertRoundsInOrder(List<CheckEvidence> kept) {
    Round last = Round.AS_FOUND;
    String check = "";
    for (CheckEvidence record : kept) {
      if (record instanceof StandardMeasured one) {
        boolean same = one.entry().check().equals(check);
        assertTrue(!same || one.round().compareTo(last) >= 0);
        last = one.round();
        check = one.entry().check();
      }
    }
  }
}
