package feedwitness.publish;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.ledger.Bucket;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Sample;
import feedwitness.site.Band;
import feedwitness.site.CompensationChoice;
import feedwitness.site.DriftLimits;
import feedwitness.site.FeedLine;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Mixer;
import feedwitness.site.PointLimits;
import feedwitness.site.ProbeMount;
import feedwitness.site.Site;
import feedwitness.site.Strength;
import feedwitness.site.StrengthOf;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** The demo nursery's points and instruments. */
final class QuarryEnd {
  static final Site SITE =
      new Site(
          "Quarry End Nursery",
          ZoneId.of("Europe/London"),
          List.of(
              point("source", "Borehole", MeasuringPoint.Place.SOURCE),
              point("tank", "Mixing tank", MeasuringPoint.Place.TANK),
              line(),
              new MeasuringPoint(
                  FixtureNursery.DRAIN,
                  "Reference bench run-off",
                  MeasuringPoint.Place.DRAIN,
                  Optional.empty(),
                  new CompensationChoice.Linear(1.88))),
          List.of(
              strength("growing-on", "Growing on", 1.5),
              strength("heavy-feeders", "Heavy feeders", 1.95)),
          List.of(),
          List.of(
              new FeedLine(
                  new feedwitness.quantity.PointName("glasshouse"),
                  "Glasshouse",
                  Optional.of(FixtureNursery.SOURCE),
                  Optional.empty(),
                  FixtureNursery.LINE,
                  Optional.of(FixtureNursery.DRAIN),
                  new Mixer.Injector(80),
                  List.of(),
                  Double.NaN,
                  DriftLimits.USUAL)));

  private QuarryEnd() {}

  private static MeasuringPoint line() {
    MeasuringPoint plain = point("line", "Glasshouse line", MeasuringPoint.Place.LINE);
    return new MeasuringPoint(
        plain.name(),
        plain.title(),
        plain.place(),
        plain.probe(),
        plain.compensation(),
        new PointLimits(
            new Band(1.2, 2.4, 0.05),
            StrengthOf.TOTAL,
            Optional.empty(),
            new Band(5, 30, 0.5),
            Set.of()));
  }

  private static Strength strength(String name, String title, double milliSiemensPerCm) {
    return new Strength(
        name,
        title,
        Optional.of(FixtureNursery.LINE),
        milliSiemensPerCm,
        StrengthOf.TOTAL,
        Strength.USUAL_TOLERANCE);
  }

  static Basis basis(Sample sample) {
    boolean typed =
        sample instanceof Indication indication && indication.origin() == Indication.Origin.TYPED;
    return new Basis(
        Basis.RULES,
        typed ? "typed" : "line-push",
        false,
        sample.point().equals(FixtureNursery.TANK)
            ? new CalibrationCurve.Linear(1.023, 0.002)
            : new CalibrationCurve.Identity(),
        sample.point().equals(FixtureNursery.SOURCE)
            ? new TemperatureCompensation.NaturalWater()
            : new TemperatureCompensation.Linear(0.0188, 0.0006),
        typed ? InstrumentLimits.UNKNOWN : new InstrumentLimits(0.01, 20, 0, 50, 0.001, 1.5, 0.3));
  }

  static Bucket bucket(Instant start, List<Measurement> measurements) {
    DoubleSummaryStatistics values =
        measurements.stream()
            .mapToDouble(Measurement::conductivity25MilliSiemensPerCm)
            .filter(Double::isFinite)
            .summaryStatistics();
    boolean none = values.getCount() == 0;
    return new Bucket(
        start,
        none ? Double.NaN : values.getAverage(),
        none ? Double.NaN : values.getMin(),
        none ? Double.NaN : values.getMax(),
        measurements.stream()
            .mapToDouble(Measurement::temperatureCelsius)
            .filter(Double::isFinite)
            .average()
            .orElse(Double.NaN),
        (int) values.getCount(),
        measurements.size() - (int) values.getCount(),
        FixtureNursery.flags(measurements));
  }

  private static MeasuringPoint point(String name, String title, MeasuringPoint.Place place) {
    return new MeasuringPoint(
        new feedwitness.quantity.PointName(name),
        title,
        place,
        Optional.of(
            new ProbeMount(new LinkAddress.Serial("/dev/serial/by-id/usb-" + name), profile(), 0)),
        new CompensationChoice.Linear(1.88));
  }

  private static DeviceProfile profile() {
    return new DeviceProfile(
        "line-push",
        "Pushes lines of text",
        new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1),
        new Protocol.Line(
            Optional.empty(), Pattern.compile("(?<ec>[0-9.]+)"), Optional.empty(), 64),
        new Fields(
            new Fields.Place.Group("ec"),
            ConductivityUnit.MILLISIEMENS_PER_CM,
            Optional.empty(),
            TemperatureUnit.CELSIUS),
        new InstrumentFacts(InstrumentFacts.Compensation.NONE, 0.01, 20, 0, 50, 0.001, 1.5, 0.3),
        Duration.ofSeconds(1),
        Duration.ofSeconds(1));
  }
}
