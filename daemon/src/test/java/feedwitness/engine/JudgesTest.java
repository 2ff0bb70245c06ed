package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Indication.Origin;
import feedwitness.sample.Reading;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.MeasuringPoint.Place;
import feedwitness.site.Site;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Live readings under judgement. */
class JudgesTest {
  private static final Basis BASIS =
      new Basis(
          Basis.RULES,
          "probe",
          true,
          new CalibrationCurve.Identity(),
          new TemperatureCompensation.None(),
          InstrumentLimits.UNKNOWN);

  private final Judges judges = new Judges();
  private final Site site =
      new Site(
          "Quarry End Nursery",
          ZoneId.of("Europe/London"),
          List.of(point("line", Place.LINE), point("drain", Place.DRAIN)));
  private long sequence;

  private static MeasuringPoint point(String name, Place place) {
    return new MeasuringPoint(
        new PointName(name), name, place, Optional.empty(), new CompensationChoice.None());
  }

  private Flags read(String point, double milliSiemensPerCm, Origin origin) {
    sequence++;
    Stamp stamp = new Stamp(1, sequence, sequence * 10_000_000_000L, sequence * 10_000, true);
    Reading reading =
        new Reading(
            milliSiemensPerCm,
            ConductivityUnit.MILLISIEMENS_PER_CM,
            18 + 0.1 * (sequence % 3),
            TemperatureUnit.CELSIUS);
    Measurement measured =
        MeasurementChain.measure(
            new Indication(new PointName(point), stamp, reading, origin), BASIS);
    return judges.judge(measured, site).flags();
  }

  private void settle(String point) {
    for (int i = 0; i < 40; i++) {
      read(point, 1.8 + 0.002 * (i % 4), Origin.PROBE);
    }
  }

  @Test
  void knowsALineInAirFromADryTray() {
    settle("line");
    settle("drain");
    assertEquals(Flags.of(QualityFlag.IN_AIR), read("line", 0.001, Origin.PROBE));
    assertEquals(Flags.of(QualityFlag.UNKNOWN), read("drain", 0.001, Origin.PROBE));
  }

  @Test
  void judgesEveryPointByItsOwnPast() {
    settle("line");
    assertTrue(read("line", 1.8, Origin.PROBE).isEmpty());
    assertEquals(Flags.of(QualityFlag.UNKNOWN), read("drain", 1.8, Origin.PROBE));
  }

  @Test
  void leavesReadingsTypedInAsTheyAre() {
    settle("line");
    assertTrue(read("line", 0.001, Origin.TYPED).isEmpty());
  }
}
