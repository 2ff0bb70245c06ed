package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quality.Flags;
import feedwitness.quality.Qualification;
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
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
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
    return judged(point, milliSiemensPerCm, 18 + 0.1 * ((sequence + 1) % 3), origin)
        .measurement()
        .flags();
  }

  private Judges.Judged judged(
      String point, double milliSiemensPerCm, double celsius, Origin origin) {
    sequence++;
    Stamp stamp = new Stamp(1, sequence, sequence * 10_000_000_000L, sequence * 10_000, true);
    Reading reading =
        new Reading(
            milliSiemensPerCm,
            ConductivityUnit.MILLISIEMENS_PER_CM,
            celsius,
            TemperatureUnit.CELSIUS);
    Measurement measured =
        MeasurementChain.measure(
            new Indication(new PointName(point), stamp, reading, origin), BASIS);
    return judges.judge(measured, site);
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
  void saysOfASpikeOnceItCameBackWhichReadingItWas() {
    settle("line");
    settle("drain");
    Judges.Judged spike = judged("line", 2.4, 18, Origin.PROBE);
    long at = spike.measurement().stamp().sequence();
    read("drain", 1.8, Origin.PROBE);
    List<Qualification> said = new ArrayList<>(spike.earlier());
    said.addAll(judged("line", 1.802, 18, Origin.PROBE).earlier());
    Instant when = Instant.ofEpochMilli(sequence * 10_000);
    assertEquals(
        List.of(
            new Qualification(new PointName("line"), 1, at, at, Flags.of(QualityFlag.SPIKE), when)),
        said);
    assertTrue(said.get(0).covers(1, at));
    assertFalse(said.get(0).covers(2, at), "another boot");
    assertFalse(said.get(0).covers(1, at + 1), "the drain's");
  }

  @Test
  void saysOfThreeReadingsInARowInOneBreath() {
    settle("line");
    long first = sequence + 1;
    for (int i = 0; i < 3; i++) {
      read("line", 2.4, Origin.PROBE);
      read("drain", 1.8, Origin.PROBE);
    }
    List<Qualification> said = judged("line", 1.802, 18, Origin.PROBE).earlier();
    assertEquals(1, said.size(), said::toString);
    assertEquals(first, said.get(0).firstSequence());
    assertEquals(first + 4, said.get(0).lastSequence());
  }

  @Test
  void knowsAfterADayWhichProbeIsInTheSameWater() {
    int minutes = 2 * 24 * 60;
    for (int i = 0; i < minutes; i++) {
      at(i, "line", water(i));
      Flags flags = at(i, "drain", water(i) + 0.6);
      assertFalse(flags.has(QualityFlag.TEMPERATURE_UNLIKE_NEIGHBOUR));
    }
    Flags flags = Flags.NONE;
    for (int i = 0; i < 40; i++) {
      at(minutes + i, "line", water(i));
      flags = at(minutes + i, "drain", water(i) + 0.6 + 0.1 * i);
    }
    assertTrue(flags.has(QualityFlag.TEMPERATURE_UNLIKE_NEIGHBOUR), flags.list()::toString);
  }

  private static double water(int minute) {
    return 16 + 4 * Math.sin(minute / 1440.0 * 2 * Math.PI);
  }

  private Flags at(int minute, String point, double celsius) {
    sequence = 100_000L + 6L * minute;
    return judged(point, 1.8 + 0.002 * (minute % 4), celsius, Origin.PROBE).measurement().flags();
  }

  @Test
  void leavesReadingsTypedInAsTheyAre() {
    settle("line");
    assertTrue(read("line", 0.001, Origin.TYPED).isEmpty());
  }
}
