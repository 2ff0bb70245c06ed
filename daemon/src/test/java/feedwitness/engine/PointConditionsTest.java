package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.Condition;
import feedwitness.alarm.PointKinds;
import feedwitness.alarm.Presence;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import feedwitness.settings.ProfileShelf;
import feedwitness.site.Band;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.ProbeMount;
import feedwitness.site.StrengthOf;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What a measurement means for the alarms of its point. */
class PointConditionsTest {
  private static final PointName LINE = new PointName("line");
  private static final MeasuringPoint POINT =
      new MeasuringPoint(
          LINE,
          "Line",
          MeasuringPoint.Place.LINE,
          Optional.of(
              new ProbeMount(
                  new LinkAddress.Serial("/dev/ttyUSB0"),
                  ProfileShelf.read(Path.of("none")).find("pushed-csv").orElseThrow(),
                  0)),
          new CompensationChoice.None());
  private static final Band BAND = new Band(1.3, 1.7, 0.05);
  private static final Band WARMTH = new Band(5, 30, 0.5);

  private boolean active;

  private static Stamp at(int second) {
    return new Stamp(1, second, second * 1_000_000_000L, second * 1000L, true);
  }

  private static Measurement reads(double milliSiemensPerCm, QualityFlag... flags) {
    Reading reading =
        new Reading(
            milliSiemensPerCm, ConductivityUnit.MILLISIEMENS_PER_CM, 31, TemperatureUnit.CELSIUS);
    return new Measurement(
        new Indication(LINE, at(100), reading, Indication.Origin.PROBE),
        milliSiemensPerCm,
        milliSiemensPerCm,
        0.01,
        31,
        Flags.of(flags),
        Bases.ofProbe(POINT, SiteCompensation.of(POINT.compensation())));
  }

  private static Measurement missing(Missing.Cause cause) {
    return new Measurement(
        new Missing(LINE, at(100), cause, "look"),
        Double.NaN,
        Double.NaN,
        Double.NaN,
        Double.NaN,
        Flags.of(QualityFlag.MISSING),
        Bases.ofProbe(POINT, SiteCompensation.of(POINT.compensation())));
  }

  private Condition condition(
      @Nullable Measurement latest, AlarmKind kind, StrengthOf of, double source, int now) {
    BandNow band = new BandNow(BAND, of, Optional.empty(), WARMTH, Optional.empty(), "configured");
    return new PointConditions(
            POINT,
            latest,
            band,
            source,
            false,
            at(0),
            ServiceState.USUAL_SILENCE,
            at(now),
            key -> active)
        .all().stream()
            .filter(condition -> condition.kind().equals(kind))
            .findFirst()
            .orElseThrow();
  }

  private Presence presence(@Nullable Measurement latest, AlarmKind kind) {
    return condition(latest, kind, StrengthOf.TOTAL, Double.NaN, 101).presence();
  }

  @Test
  void holdsStrengthAndTemperatureAgainstTheirLimits() {
    assertEquals(Presence.ACTIVE, presence(reads(1.71), PointKinds.CONDUCTIVITY_HIGH));
    assertEquals(Presence.CLEAR, presence(reads(1.70), PointKinds.CONDUCTIVITY_HIGH));
    assertEquals(Presence.ACTIVE, presence(reads(1.29), PointKinds.CONDUCTIVITY_LOW));
    assertEquals(Presence.ACTIVE, presence(reads(1.5), PointKinds.TEMPERATURE_HIGH));
    assertEquals(Presence.CLEAR, presence(reads(1.5), PointKinds.TEMPERATURE_LOW));
  }

  @Test
  void letsAValueComeBackByTheDeadband() {
    active = true;
    assertEquals(Presence.ACTIVE, presence(reads(1.66), PointKinds.CONDUCTIVITY_HIGH));
    assertEquals(Presence.CLEAR, presence(reads(1.64), PointKinds.CONDUCTIVITY_HIGH));
    assertEquals(Presence.ACTIVE, presence(reads(1.34), PointKinds.CONDUCTIVITY_LOW));
    assertEquals(Presence.CLEAR, presence(reads(1.36), PointKinds.CONDUCTIVITY_LOW));
  }

  @Test
  void judgesThePartAddedByFeedOnlyIfTheSourceIsKnown() {
    Condition added =
        condition(reads(2.2), PointKinds.CONDUCTIVITY_HIGH, StrengthOf.ADDED, 0.46, 101);
    assertEquals(Presence.ACTIVE, added.presence());
    assertEquals(
        "line: 1.74 mS/cm added by feed is above the high limit 1.70 mS/cm", added.words());
    assertEquals(
        Presence.UNKNOWN,
        condition(reads(2.2), PointKinds.CONDUCTIVITY_HIGH, StrengthOf.ADDED, Double.NaN, 101)
            .presence());
  }

  @Test
  void knowsNothingOfStrengthInAirInSpikesAndInSilence() {
    for (AlarmKind kind :
        new AlarmKind[] {PointKinds.CONDUCTIVITY_HIGH, PointKinds.CONDUCTIVITY_LOW}) {
      assertEquals(Presence.UNKNOWN, presence(reads(0.01, QualityFlag.IN_AIR), kind));
      assertEquals(Presence.UNKNOWN, presence(reads(9, QualityFlag.SPIKE), kind));
      assertEquals(Presence.UNKNOWN, presence(missing(Missing.Cause.SILENT), kind));
      assertEquals(Presence.UNKNOWN, presence(null, kind));
      assertEquals(
          Presence.UNKNOWN,
          condition(reads(9), kind, StrengthOf.TOTAL, Double.NaN, 200).presence());
    }
  }

  @Test
  void doesNotHideALowStrengthThatIsSuspect() {
    assertEquals(
        Presence.ACTIVE, presence(reads(0.5, QualityFlag.LOW_HOLD), PointKinds.CONDUCTIVITY_LOW));
  }

  @Test
  void tellsAirFaultAndSilenceApart() {
    assertEquals(Presence.ACTIVE, presence(reads(0, QualityFlag.IN_AIR), PointKinds.IN_AIR));
    assertEquals(Presence.CLEAR, presence(reads(1.5), PointKinds.IN_AIR));
    assertEquals(
        Presence.ACTIVE, presence(reads(1.5, QualityFlag.STUCK), PointKinds.INSTRUMENT_FAULT));
    assertEquals(Presence.CLEAR, presence(reads(1.5), PointKinds.INSTRUMENT_FAULT));
    Measurement refused = missing(Missing.Cause.INSTRUMENT_REFUSED);
    assertEquals(Presence.ACTIVE, presence(refused, PointKinds.INSTRUMENT_FAULT));
    assertEquals(Presence.UNKNOWN, presence(refused, PointKinds.NO_DATA), "one cause, one alarm");
    Measurement pulled = missing(Missing.Cause.CABLE_PULLED);
    assertEquals(Presence.ACTIVE, presence(pulled, PointKinds.NO_DATA));
    assertEquals(Presence.UNKNOWN, presence(pulled, PointKinds.INSTRUMENT_FAULT));
  }

  @Test
  void noticesThatNothingComesAtAll() {
    assertEquals(Presence.CLEAR, presence(reads(1.5), PointKinds.NO_DATA));
    assertEquals(
        Presence.ACTIVE,
        condition(reads(1.5), PointKinds.NO_DATA, StrengthOf.TOTAL, 0, 191).presence());
    Condition never = condition(null, PointKinds.NO_DATA, StrengthOf.TOTAL, 0, 91);
    assertEquals(Presence.ACTIVE, never.presence());
    assertTrue(never.words().contains("nothing came since the service started"));
    assertEquals(
        Presence.UNKNOWN, condition(null, PointKinds.NO_DATA, StrengthOf.TOTAL, 0, 89).presence());
  }
}
