package feedwitness.measurement;

import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a measurement's standard uncertainty is made of (JCGM 100, 5.1.2, uncorrelated lines). Made
 * when somebody asks; the measurement itself carries only the sum, which is exactly this one.
 *
 * @param contributions one a source, in the order of {@link Contribution.Source}
 * @param standardUncertaintyMilliSiemensPerCm of the conductivity at 25 °C; NaN where the
 *     instrument's accuracy is unknown: a budget without its main part would flatter
 */
public record UncertaintyBudget(
    List<Contribution> contributions, double standardUncertaintyMilliSiemensPerCm) {
  public UncertaintyBudget {
    contributions = List.copyOf(contributions);
  }

  /** Empty where the measurement has no conductivity at 25 °C. */
  public static Optional<UncertaintyBudget> of(Measurement measurement) {
    if (!(measurement.sample() instanceof Indication indication)
        || Double.isNaN(measurement.conductivity25MilliSiemensPerCm())) {
      return Optional.empty();
    }
    Reading reading = indication.reading();
    Basis basis = measurement.basis();
    double celsius = reading.temperatureCelsius();
    double indicated = reading.conductivityMilliSiemensPerCm();
    return Applied.at(celsius, basis).map(factor -> of(indicated, celsius, factor, basis));
  }

  private static UncertaintyBudget of(
      double indicated,
      double celsius,
      TemperatureCompensation.Outcome.Factor factor,
      Basis basis) {
    Operating at = new Operating(indicated, celsius, factor.value(), factor.perKelvin(), basis);
    return new UncertaintyBudget(
        Stream.of(BudgetLine.values()).map(line -> line.contribution(at)).toList(),
        BudgetLine.combine(at));
  }
}
