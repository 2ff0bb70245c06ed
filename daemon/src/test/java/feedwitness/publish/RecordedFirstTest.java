package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.check.CheckReply;
import feedwitness.check.CheckRequest;
import feedwitness.check.CheckSession;
import feedwitness.check.CheckSubject;
import feedwitness.check.ComparisonMade;
import feedwitness.check.Instrument;
import feedwitness.check.Phase;
import feedwitness.check.Round;
import feedwitness.check.When;
import feedwitness.engine.CheckBench;
import feedwitness.engine.CheckWatch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;

/** A fact about a check counts when it is on record; what cannot be recorded was not done. */
class RecordedFirstTest {
  private static final CheckSubject TANK = CheckSubject.probe(FixtureNursery.TANK);

  private final FixtureNursery nursery = new FixtureNursery();
  private final FixtureEvidence disk = new FixtureEvidence();
  private final CheckWatch checks = nursery.checks(disk);

  RecordedFirstTest() {
    nursery.indicate(FixtureNursery.TANK, 1.5, 20);
  }

  private CheckRequest.Answer begin() throws IOException {
    return checks.begin(
        new CheckBench.Wish(
            TANK,
            "Kim",
            List.of("low", "high"),
            Double.NaN,
            Instrument.handheld(Double.NaN, true, Double.NaN),
            true));
  }

  private CheckReply act(BiFunction<CheckSession, When, CheckReply> deed) throws IOException {
    nursery.wait(Duration.ofSeconds(5));
    CheckReply reply = checks.act(TANK, deed::apply);
    assertTrue(reply.accepted(), reply::words);
    return reply;
  }

  private void measure(double milliSiemensPerCm) throws IOException {
    act((session, now) -> session.rinsed(now));
    act((session, now) -> session.immersed(now));
    act((session, now) -> session.typed(milliSiemensPerCm, 25, now));
  }

  private void round(double gain) throws IOException {
    measure(gain * 1.408);
    measure(gain * 2.765);
  }

  private Phase phase() {
    return checks.stand(TANK).open().orElseThrow().phase();
  }

  private static void isNotDone(IOException said) {
    assertTrue(String.valueOf(said.getMessage()).contains("the disk is full"), said::toString);
    assertTrue(String.valueOf(said.getMessage()).contains("do it again"), said::toString);
  }

  @Test
  void aCheckThatCannotBeRecordedHasNotBegun() throws Exception {
    disk.fill();
    isNotDone(assertThrows(IOException.class, this::begin));
    assertEquals(Optional.empty(), checks.stand(TANK).open());
    assertEquals(Optional.empty(), checks.aside("tank"));
    assertEquals(List.of(), checks.evidence());
    disk.mend();
    assertInstanceOf(CheckRequest.Begun.class, begin());
    assertEquals("tank-20260601-1", checks.stand(TANK).open().orElseThrow().id());
  }

  @Test
  void aResultThatCannotBeRecordedIsMeasuredAgainFromItsRinse() throws Exception {
    begin();
    measure(1.408);
    disk.fill();
    isNotDone(assertThrows(IOException.class, () -> measure(2.765)));
    assertEquals(1, checks.stand(TANK).open().orElseThrow().results().size());
    assertEquals(Phase.RINSE, phase());
    assertTrue(checks.stand(TANK).trouble().orElseThrow().contains("the disk is full"));
    disk.mend();
    measure(2.765);
    assertEquals(Phase.ROUND_DONE, phase());
    assertEquals(Optional.empty(), checks.stand(TANK).trouble());
  }

  @Test
  void anAdjustmentIsInUseOnlyOnceItIsOnRecord() throws Exception {
    begin();
    round(0.93);
    act((session, now) -> session.cleaned("Kim", "brush", now));
    round(0.94);
    disk.fill();
    isNotDone(assertThrows(IOException.class, () -> checks.adjust(TANK, "Kim", false)));
    assertEquals(List.of(), nursery.calibrated());
    assertEquals(Round.AFTER_CLEANING, checks.stand(TANK).open().orElseThrow().round());
    assertEquals(Phase.ROUND_DONE, phase());
    disk.mend();
    assertTrue(checks.adjust(TANK, "Kim", false).accepted());
    assertEquals(1, nursery.calibrated().size());
    assertInstanceOf(CalibrationCurve.Linear.class, nursery.calibrated().get(0));
  }

  @Test
  void anEndThatCannotBeRecordedLeavesTheCheckOpen() throws Exception {
    begin();
    round(0.93);
    disk.fill();
    isNotDone(
        assertThrows(IOException.class, () -> act((session, now) -> session.finish("Kim", now))));
    assertEquals(Phase.ROUND_DONE, phase());
    assertEquals(List.of(), checks.history(TANK).qualifications());
    disk.mend();
    act((session, now) -> session.finish("Kim", now));
    assertEquals(1, checks.history(TANK).qualifications().size());
  }

  @Test
  void whatWasSeenOnceIsRecordedWhenThereIsRoomAgain() {
    CheckSubject line = CheckSubject.probe(FixtureNursery.LINE);
    water(1.5, 5);
    water(0.47, 60);
    disk.fill();
    water(1.5, 1);
    assertEquals(List.of(), checks.history(line).comparisons());
    disk.mend();
    nursery.wait(Duration.ofSeconds(31));
    checks.tick(nursery.stampNow());
    assertEquals(
        List.of(ComparisonMade.Type.PLAIN_WATER),
        checks.history(line).comparisons().stream().map(ComparisonMade::type).toList());
  }

  @Test
  void whatWaitsForTheDiskCountsWhenItIsThere() {
    CheckSubject line = CheckSubject.probe(FixtureNursery.LINE);
    water(1.5, 5);
    water(0.47, 60);
    disk.hold();
    water(1.5, 1);
    nursery.wait(Duration.ofSeconds(11));
    assertEquals(List.of(), checks.history(line).comparisons());
    assertTrue(checks.stand(line).trouble().orElseThrow().contains("not on disk yet"));
    disk.release();
    assertEquals(1, checks.history(line).comparisons().size());
    assertEquals(Optional.empty(), checks.stand(line).trouble());
  }

  @Test
  void anAdjustmentThatWaitsForTheDiskIsNotInUse() throws Exception {
    begin();
    round(0.93);
    act((session, now) -> session.cleaned("Kim", "brush", now));
    round(0.94);
    disk.hold();
    CompletableFuture<Boolean> adjusting =
        CompletableFuture.supplyAsync(
            () -> {
              try {
                return checks.adjust(TANK, "Kim", false).accepted();
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
    while (checks.stand(TANK).open().orElseThrow().round() != Round.AS_LEFT) {
      Thread.onSpinWait();
    }
    assertEquals(List.of(), nursery.calibrated());
    assertEquals(List.of(), checks.history(TANK).adjustments());
    disk.release();
    assertTrue(adjusting.get());
    assertEquals(1, nursery.calibrated().size());
    assertEquals(1, checks.history(TANK).adjustments().size());
  }

  private void water(double line, int readings) {
    for (int i = 0; i < readings; i++) {
      nursery.wait(Duration.ofSeconds(5));
      nursery.indicate(FixtureNursery.SOURCE, 0.46, 25);
      nursery.indicate(FixtureNursery.LINE, line, 25);
    }
  }
}
