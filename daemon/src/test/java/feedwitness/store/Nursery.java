package feedwitness.store;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.ledger.History;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Measurements of Quarry End Nursery for the tests of the store. */
final class Nursery {
  static final PointName LINE = new PointName("line");
  static final PointName TANK = new PointName("tank");
  static final PointName DRAIN = new PointName("drain");

  static final Instant MONDAY = Instant.parse("2026-06-01T06:00:00Z");

  static final Basis LINEAR =
      new Basis(
          Basis.RULES,
          "pushed-csv",
          false,
          new CalibrationCurve.Linear(1.021, -0.004),
          new TemperatureCompensation.Linear(0.019, 0.001),
          new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3));
  static final Basis WATER =
      new Basis(
          Basis.RULES,
          "query-and-reply",
          false,
          new CalibrationCurve.Identity(),
          new TemperatureCompensation.NaturalWater(),
          InstrumentLimits.UNKNOWN);

  private Nursery() {}

  static StoreSettings settings(Path directory) {
    return new StoreSettings(directory, Duration.ofMillis(200), 1_024);
  }

  static H2Ledger open(Path directory) {
    return open(settings(directory));
  }

  static H2Ledger open(StoreSettings settings) {
    LedgerOpening opening = H2Ledger.open(settings, TimeSource.system());
    if (opening instanceof LedgerOpening.Opened opened) {
      return opened.ledger();
    }
    throw new AssertionError(opening.toString());
  }

  static Stamp stamp(int boot, long sequence, Instant wall) {
    return new Stamp(
        boot, sequence, 77_000_000_000L + sequence * 1_000_000_000L, wall.toEpochMilli(), true);
  }

  static Measurement measured(PointName point, Stamp stamp, double mS, double celsius) {
    return measured(
        point,
        stamp,
        new Reading(mS, ConductivityUnit.MILLISIEMENS_PER_CM, celsius, TemperatureUnit.CELSIUS),
        LINEAR);
  }

  static Measurement measured(PointName point, Stamp stamp, Reading reading, Basis basis) {
    return MeasurementChain.measure(
        new Indication(point, stamp, reading, Indication.Origin.PROBE), basis);
  }

  static Measurement typed(PointName point, Stamp stamp, Reading reading) {
    return MeasurementChain.measure(
        new Indication(point, stamp, reading, Indication.Origin.TYPED), WATER);
  }

  static Measurement missing(PointName point, Stamp stamp, Missing.Cause cause, String detail) {
    return MeasurementChain.measure(new Missing(point, stamp, cause, detail), LINEAR);
  }

  static List<Measurement> scan(History history, PointName point) {
    return scan(history, point, Instant.MIN, Instant.MAX);
  }

  static List<Measurement> scan(History history, PointName point, Instant from, Instant to) {
    List<Measurement> all = new ArrayList<>();
    history.scan(point, from, to, all::add);
    return all;
  }

  static void sync(H2Ledger ledger) {
    if (!ledger.sync(Duration.ofSeconds(30))) {
      throw new AssertionError("no sync: " + ledger.trouble());
    }
  }
}
