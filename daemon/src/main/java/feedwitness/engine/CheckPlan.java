package feedwitness.engine;

import feedwitness.calibration.StandardShelf;
import feedwitness.check.CheckInterval;
import feedwitness.quantity.PointName;
import java.util.function.Function;

/**
 * How probes are to be checked, and with what.
 *
 * @param tolerancePercent half-width of the error allowed at a point, %
 * @param interval between checks there
 */
public record CheckPlan(
    StandardShelf shelf,
    Function<PointName, Double> tolerancePercent,
    Function<PointName, CheckInterval> interval) {
  double tolerance(PointName point) {
    return tolerancePercent.apply(point);
  }
}
