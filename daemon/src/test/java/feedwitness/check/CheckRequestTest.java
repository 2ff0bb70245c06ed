package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.StandardShelf;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a check is refused for, and what must be accepted first. */
class CheckRequestTest {
  private final Bench bench = new Bench();

  private static CheckRequest request(
      String author, List<String> standards, double tolerance, double feedLow, LocalDate today) {
    return new CheckRequest(
        "tank-1",
        Bench.TANK,
        author,
        Bench.SHELF,
        standards,
        tolerance,
        Bench.plain(),
        feedLow,
        1.95,
        1.52,
        Optional.of(Bench.BEFORE),
        today,
        false);
  }

  private void refused(CheckRequest request, String words) {
    CheckRequest.Refused refused =
        assertInstanceOf(CheckRequest.Refused.class, request.begin(bench.now(), CheckLimits.USUAL));
    assertTrue(refused.words().contains(words), refused::words);
  }

  private void asks(CheckRequest request, String words) {
    CheckRequest.Confirm confirm =
        assertInstanceOf(CheckRequest.Confirm.class, request.begin(bench.now(), CheckLimits.USUAL));
    assertTrue(
        confirm.objections().stream().anyMatch(o -> o.contains(words)),
        confirm.objections()::toString);
  }

  @Test
  void saysWhatCannotBe() {
    List<String> both = List.of("low", "middle");
    refused(request(" ", both, 3, 1.5, Bench.TODAY), "say who");
    refused(request("the grower", both, 50, 1.5, Bench.TODAY), "0.1 to 20 %");
    refused(request("the grower", List.of(), 3, 1.5, Bench.TODAY), "name two");
    refused(request("the grower", List.of("low", "law"), 3, 1.5, Bench.TODAY), "no standard 'law'");
    refused(request("the grower", List.of("low", "low"), 3, 1.5, Bench.TODAY), "a stronger one");
  }

  @Test
  void saysThatAStandardIsOutsideTheRangeOfTheProbe() {
    StandardShelf shelf =
        new StandardShelf(
            List.of(
                Bench.LOW,
                new feedwitness.calibration.StandardSolution(
                    "strong",
                    new feedwitness.calibration.StandardCourse.Kcl(
                        feedwitness.solution.KclSolution.MOLAL_1),
                    "QE-S01",
                    1,
                    Optional.empty(),
                    Optional.empty())));
    CheckRequest usual = request("the grower", List.of("low", "strong"), 3, 1.5, Bench.TODAY);
    refused(
        new CheckRequest(
            usual.id(),
            usual.subject(),
            usual.author(),
            shelf,
            usual.standards(),
            3,
            usual.instrument(),
            1.5,
            1.95,
            1.52,
            Optional.empty(),
            Bench.TODAY,
            false),
        "outside what tank can read, 0 to 20 mS/cm; take a weaker standard");
  }

  @Test
  void asksBeforeAnOldBottleIsUsed() {
    List<String> both = List.of("low", "middle");
    asks(request("the grower", both, 3, 1.5, LocalDate.of(2027, 6, 1)), "expired on 2027-04-30");
    asks(request("the grower", both, 3, 1.5, LocalDate.of(2026, 1, 1)), "in the future");
  }

  @Test
  void asksForStandardsAroundTheFeed() {
    asks(
        request("the grower", List.of("middle", "high"), 3, 1.5, Bench.TODAY),
        "take 'low' and 'middle', which lie around it");
    asks(
        request("the grower", List.of("low", "middle"), 3, 0.8, Bench.TODAY),
        "the verdict holds near them only");
    asks(request("the grower", List.of("low"), 3, 1.5, Bench.TODAY), "one standard cannot tell");
  }

  @Test
  void letsTwoPeopleAtOneProbeKnowOfEachOther() {
    OpenChecks open = new OpenChecks();
    CheckRequest first = Bench.request(Bench.plain(), "tank-1");
    assertInstanceOf(
        CheckRequest.Begun.class,
        open.begin(first, bench.now(), CheckLimits.USUAL, Bench.ZONE, List.of()));
    bench.wait(Duration.ofMinutes(5));
    CheckRequest.Refused refused =
        assertInstanceOf(
            CheckRequest.Refused.class,
            open.begin(
                Bench.request(Bench.plain(), "tank-2"),
                bench.now(),
                CheckLimits.USUAL,
                Bench.ZONE,
                List.of()));
    assertTrue(refused.words().contains("the grower has been checking tank since"), refused::words);
    CheckSession session = open.of(Bench.TANK).orElseThrow();
    session.abandon("the grower", "", bench.now());
    open.tidy();
    assertEquals(List.of(), List.copyOf(open.all()));
  }
}
