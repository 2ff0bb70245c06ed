package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import java.util.List;
import java.util.Optional;

/** Works the calibration curve out that would put a probe right. */
public final class AdjustmentSum {
  /** Further off than this no probe ages; something else is wrong. */
  static final double MOST_PERCENT = 20;

  private static final double LEAST_RATIO = 1.3;

  private AdjustmentSum() {}

  /** An expected refusal says why. */
  public sealed interface Outcome {}

  /**
   * To be confirmed by whoever is at the probe.
   *
   * @param curve from indicated to calibrated
   * @param words what it does
   */
  public record Proposed(CurveAdjusted.Method method, CalibrationCurve.Linear curve, String words)
      implements Outcome {}

  /** No adjustment, and why. */
  public record Refused(String words) implements Outcome {}

  /**
   * From one standard the cell constant, from two slope and offset, with uncertainties and their
   * correlation.
   *
   * @param instrument with the calibration now in use
   * @param results of one round, weakest first, one or two
   */
  static Outcome of(Instrument instrument, List<StandardResult> results) {
    for (StandardResult result : results) {
      double off = result.errorPercent();
      if (!(Math.abs(off) <= MOST_PERCENT)) {
        return new Refused(tooFar(result.title(), result.shown() / result.reference()));
      }
    }
    Outcome outcome =
        results.size() == 1
            ? onePoint(instrument.basis().calibration(), results.get(0))
            : twoPoint(results.get(0), results.get(results.size() - 1));
    return outcome instanceof Proposed proposed ? bounded(proposed) : outcome;
  }

  /** Small steps add up: the whole curve must stay near what the maker delivered. */
  private static Outcome bounded(Proposed proposed) {
    double slope = proposed.curve().slope();
    return Math.abs(100 * (slope - 1)) > MOST_PERCENT
        ? new Refused(
            "together with earlier adjustments the slope would be %s, more than 20 %% from 1; %s"
                .formatted(Say.number(slope, 4), causes()))
        : proposed;
  }

  private static Proposed onePoint(CalibrationCurve inUse, StandardResult result) {
    double factor = result.reference() / result.shown();
    double relative = result.standardPercent() / 100 * factor;
    double offset = inUse instanceof CalibrationCurve.Linear it ? it.offsetMilliSiemensPerCm() : 0;
    double slope = inUse.slope() * factor;
    CalibrationCurve.Linear curve =
        new CalibrationCurve.Linear(
            slope,
            offset * factor,
            slope * relative,
            Math.abs(offset * factor) * relative,
            offset < 0 ? -1 : 1);
    return new Proposed(
        CurveAdjusted.Method.ONE_POINT,
        curve,
        "readings will be multiplied by %s (± %s %%)"
            .formatted(Say.number(factor, 5), Say.fixed(200 * relative, 1)));
  }

  /**
   * The straight line through (indicated, reference) of both. Errors of each standard alone are
   * independent; those common to both, such as of the temperature sensor, scale the whole line.
   */
  private static Outcome twoPoint(StandardResult low, StandardResult high) {
    if (!(high.indicated() / low.indicated() > LEAST_RATIO)) {
      return new Refused(
          "the two standards read %s and %s mS/cm, too close together for a slope and an offset; take standards at least 1.3 times apart"
              .formatted(Say.number(low.indicated(), 4), Say.number(high.indicated(), 4)));
    }
    double x1 = low.indicated();
    double x2 = high.indicated();
    double apart = x2 - x1;
    double slope = (high.reference() - low.reference()) / apart;
    double offset = low.reference() - slope * x1;
    double s1 = low.ownPercent() / 100 * low.reference();
    double s2 = high.ownPercent() / 100 * high.reference();
    double common = Math.max(low.commonPercent(), high.commonPercent()) / 100;
    double slopeVariance = (s1 * s1 + s2 * s2) / (apart * apart) + square(slope * common);
    double offsetVariance =
        (square(x2 * s1) + square(x1 * s2)) / (apart * apart) + square(offset * common);
    double covariance =
        -(x2 * s1 * s1 + x1 * s2 * s2) / (apart * apart) + slope * offset * common * common;
    double correlation = covariance / Math.sqrt(slopeVariance * offsetVariance);
    CalibrationCurve.Linear curve =
        new CalibrationCurve.Linear(
            slope,
            offset,
            Math.sqrt(slopeVariance),
            Math.sqrt(offsetVariance),
            Math.max(-1, Math.min(1, correlation)));
    return new Proposed(
        CurveAdjusted.Method.TWO_POINT,
        curve,
        "calibrated = %s × indicated + %s mS/cm"
            .formatted(Say.number(slope, 5), Say.number(offset, 3)));
  }

  private static double square(double number) {
    return number * number;
  }

  /**
   * Why it is not adjusted, with what usually is behind such a ratio of shown to true.
   *
   * @param title of the standard
   */
  private static String tooFar(String title, double ratio) {
    String how =
        "it reads %s of what %s is; more than 20 %% off is not adjusted: "
            .formatted(Say.percent(100 * ratio), title);
    if (near(ratio, 1000) || near(ratio, 0.001)) {
      return how
          + "the unit is mistaken, µS/cm and mS/cm differ by 1000; set it right in the configuration";
    }
    if (near(ratio, 10) || near(ratio, 0.1)) {
      return how
          + "the unit is mistaken, mS/cm and CF differ by 10; set it right in the configuration";
    }
    if (near(ratio, 500) || near(ratio, 640) || near(ratio, 700)) {
      return how + "the instrument shows ppm; set it to mS/cm or µS/cm";
    }
    return how + causes();
  }

  private static boolean near(double ratio, double wanted) {
    return Math.abs(ratio / wanted - 1) < MOST_PERCENT / 100;
  }

  private static String causes() {
    return "usual causes are the wrong bottle, an old or thinned standard, a bubble in the cell, the wall of the beaker too close, dirt, another cell constant set in the instrument, or a damaged probe; look for these first";
  }

  /**
   * Takes an adjustment back: a new record, nothing is erased.
   *
   * @param id names the new record, unique
   * @param mark last measurement with the curve that is taken back, if known
   */
  public static CurveAdjusted undo(
      CurveAdjusted last, String id, String author, When now, Optional<Mark> mark) {
    return new CurveAdjusted(
        new Entry("", last.subject(), now.wall(), author),
        id,
        CurveAdjusted.Method.UNDO,
        last.after(),
        last.before(),
        "takes back " + last.id(),
        last.id(),
        mark);
  }
}
