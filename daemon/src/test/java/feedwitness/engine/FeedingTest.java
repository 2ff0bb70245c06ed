package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.Band;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.PointLimits;
import feedwitness.site.Site;
import feedwitness.site.Strength;
import feedwitness.site.StrengthOf;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What runs on a line, and the limits that follow. */
class FeedingTest {
  private static final PointName LINE = new PointName("line");
  private static final MeasuringPoint POINT =
      new MeasuringPoint(
          LINE,
          "Line",
          MeasuringPoint.Place.LINE,
          Optional.empty(),
          new CompensationChoice.None(),
          new PointLimits(
              new Band(1.2, 2.4, 0.05),
              StrengthOf.TOTAL,
              Optional.empty(),
              Band.NONE,
              Set.of(DayOfWeek.SUNDAY)));
  private static final MeasuringPoint BOREHOLE =
      new MeasuringPoint(
          new PointName("source"),
          "Borehole",
          MeasuringPoint.Place.SOURCE,
          Optional.empty(),
          new CompensationChoice.Iso7888());
  private static final Site SITE =
      new Site(
          "Quarry End Nursery",
          ZoneId.of("Europe/London"),
          List.of(POINT, BOREHOLE),
          List.of(
              new Strength(
                  "growing-on", "Growing on", Optional.of(LINE), 1.04, StrengthOf.ADDED, 0.15)),
          List.of());

  /** 2026-06-06 is a Saturday. */
  private static final String SATURDAY = "2026-06-06T14:00:00Z";

  private final Feeding feeding = new Feeding();

  private static Stamp at(String time) {
    Instant wall = Instant.parse(time);
    return new Stamp(1, 1, wall.getEpochSecond() * 1_000_000_000L, wall.toEpochMilli(), true);
  }

  private void say(Running.What what, String time) {
    String strength = what == Running.What.STRENGTH ? "growing-on" : "";
    feeding.say(LINE, new Running(what, strength, "Kim", Optional.of(at(time))));
  }

  private BandNow band(String time) {
    return feeding.band(SITE, POINT, at(time));
  }

  private Running.What runs(String time) {
    return feeding.at(POINT, SITE.zone(), at(time)).what();
  }

  @Test
  void usesThePointsOwnLimitsWhileNobodyHasSaidAnything() {
    assertEquals(new Band(1.2, 2.4, 0.05), band(SATURDAY).conductivity());
    assertEquals("configured", band(SATURDAY).why());
  }

  @Test
  void putsLimitsAroundTheStrengthThatRuns() {
    say(Running.What.STRENGTH, SATURDAY);
    BandNow band = band(SATURDAY);
    assertEquals(0.89, band.conductivity().low(), 1e-9);
    assertEquals(1.19, band.conductivity().high(), 1e-9);
    assertEquals(StrengthOf.ADDED, band.of());
    assertEquals("Growing on", band.why());
  }

  @Test
  void allowsPlainWaterHardlyMoreThanTheSource() {
    say(Running.What.PLAIN_WATER, SATURDAY);
    assertEquals(0.15, band(SATURDAY).conductivity().high());
    assertEquals(Optional.of(BOREHOLE.name()), band(SATURDAY).source());
  }

  @Test
  void doesNotCountStrengthWhileNothingRuns() {
    say(Running.What.NOTHING, SATURDAY);
    assertEquals(Optional.of("nothing runs here"), band(SATURDAY).idle());
  }

  @Test
  void takesPlainWaterToRunOnItsDayInTheNurserysOwnTime() {
    assertEquals(Running.What.UNSAID, runs("2026-06-06T22:59:00Z"));
    assertEquals(Running.What.PLAIN_WATER, runs("2026-06-06T23:00:00Z"), "midnight in London");
    assertEquals(Running.What.PLAIN_WATER, runs("2026-06-07T22:59:00Z"));
    assertEquals(Running.What.UNSAID, runs("2026-06-07T23:00:00Z"));
  }

  @Test
  void letsWhatWasSaidLastUntilAPlainWaterDayBeginsOrEnds() {
    say(Running.What.STRENGTH, "2026-06-03T09:00:00Z");
    assertEquals(Running.What.STRENGTH, runs(SATURDAY));
    assertEquals(Running.What.PLAIN_WATER, runs("2026-06-07T09:00:00Z"));
    assertEquals(Running.What.UNSAID, runs("2026-06-08T09:00:00Z"));
    say(Running.What.STRENGTH, "2026-06-07T10:00:00Z");
    assertEquals(Running.What.STRENGTH, runs("2026-06-07T11:00:00Z"), "said on the day itself");
    assertEquals(Running.What.UNSAID, runs("2026-06-08T09:00:00Z"));
  }

  @Test
  void givesWhatWasTurnedOnTimeToArrive() {
    say(Running.What.STRENGTH, SATURDAY);
    assertTrue(feeding.settling(LINE, at("2026-06-06T14:04:59Z")));
    assertFalse(feeding.settling(LINE, at("2026-06-06T14:05:00Z")));
  }
}
