package feedwitness.measurement;

import feedwitness.measurement.TemperatureCompensation.Outcome.Factor;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The factor that a basis applies at a temperature. */
final class Applied {
  /** The indication stands: referred by the instrument already, or wanted as it is. */
  private static final Factor ONE = new Factor(1, 0);

  private Applied() {}

  /** Null where the compensation has no data. */
  static @Nullable Factor factor(double celsius, Basis basis) {
    if (asItIs(basis)) {
      return ONE;
    }
    return basis.compensation().at(celsius) instanceof Factor factor ? factor : null;
  }

  static Optional<Factor> at(double celsius, Basis basis) {
    return Optional.ofNullable(factor(celsius, basis));
  }

  /** Whether nothing is compensated here. */
  static boolean asItIs(Basis basis) {
    return basis.indicatedAt25() || basis.compensation() instanceof TemperatureCompensation.None;
  }
}
