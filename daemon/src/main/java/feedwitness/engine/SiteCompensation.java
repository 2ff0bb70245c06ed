package feedwitness.engine;

import feedwitness.measurement.CompensationSource;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.Instant;
import java.util.Map;
import java.util.stream.Collectors;

/** What the configuration chose for each point; the same at all times. */
final class SiteCompensation implements CompensationSource {
  /** How far linear coefficients of feeds scatter about the default, 1/K (standard uncertainty). */
  private static final double ALPHA_STANDARD_UNCERTAINTY = 0.0006;

  private final Map<PointName, TemperatureCompensation> chosen;

  SiteCompensation(Site site) {
    this.chosen =
        site.points().stream()
            .collect(Collectors.toUnmodifiableMap(MeasuringPoint::name, p -> of(p.compensation())));
  }

  @Override
  public TemperatureCompensation of(PointName point, Instant at) {
    return chosen.getOrDefault(point, new TemperatureCompensation.None());
  }

  static TemperatureCompensation of(CompensationChoice choice) {
    if (choice instanceof CompensationChoice.Linear linear) {
      return new TemperatureCompensation.Linear(
          linear.percentPerKelvin() / 100, ALPHA_STANDARD_UNCERTAINTY);
    }
    if (choice instanceof CompensationChoice.Iso7888) {
      return new TemperatureCompensation.NaturalWater();
    }
    return choice instanceof CompensationChoice.Kcl
        ? new TemperatureCompensation.Kcl()
        : new TemperatureCompensation.None();
  }
}
