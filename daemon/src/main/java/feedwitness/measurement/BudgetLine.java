package feedwitness.measurement;

import feedwitness.measurement.Contribution.Distribution;
import feedwitness.measurement.Contribution.Source;

/**
 * The arithmetic of each line. The measurand is factor(T) × (slope × (indicated + errors) +
 * offset); sensitivities are its partial derivatives.
 *
 * <p>Rules 1 knew neither noise nor an assumed temperature accuracy; bases of that time keep their
 * numbers.
 */
enum BudgetLine {
  /**
   * Counted beside a recorded calibration as well: what the maker states also covers bent response
   * and drift since, of which a straight line through two standards says nothing.
   */
  INSTRUMENT(Source.INSTRUMENT, Distribution.RECTANGULAR, "mS/cm", "1") {
    @Override
    double value(Operating at) {
      return at.limits().accuracyPercent() / 100 * at.indicated();
    }

    @Override
    double sensitivity(Operating at) {
      return at.perIndicated();
    }
  },
  CALIBRATION(Source.CALIBRATION, Distribution.NORMAL, "mS/cm", "1") {
    @Override
    double value(Operating at) {
      return at.basis().calibration().standardUncertainty(at.indicated());
    }

    @Override
    double sensitivity(Operating at) {
      return at.factor();
    }
  },
  TEMPERATURE_SENSOR(Source.TEMPERATURE_SENSOR, Distribution.RECTANGULAR, "K", "mS/cm by K") {
    @Override
    double value(Operating at) {
      if (Applied.asItIs(at.basis())) {
        return 0;
      }
      double stated = at.limits().temperatureAccuracyKelvin();
      return assumed(at) ? ASSUMED_TEMPERATURE_ACCURACY_KELVIN : Double.isNaN(stated) ? 0 : stated;
    }

    @Override
    double sensitivity(Operating at) {
      return at.calibrated() * at.perKelvin();
    }

    @Override
    boolean assumed(Operating at) {
      return at.basis().rules() >= 2
          && !Applied.asItIs(at.basis())
          && Double.isNaN(at.limits().temperatureAccuracyKelvin());
    }
  },
  COMPENSATION(Source.COMPENSATION, Distribution.NORMAL, "relative", "mS/cm") {
    @Override
    double value(Operating at) {
      return Applied.asItIs(at.basis())
          ? 0
          : at.basis().compensation().relativeStandardUncertainty(at.celsius());
    }

    @Override
    double sensitivity(Operating at) {
      return at.at25();
    }
  },
  RESOLUTION(Source.RESOLUTION, Distribution.STEP, "mS/cm", "1") {
    @Override
    double value(Operating at) {
      double stated = at.limits().resolutionMilliSiemensPerCm();
      return Double.isNaN(stated) ? 0 : stated;
    }

    @Override
    double sensitivity(Operating at) {
      return at.perIndicated();
    }
  },
  /**
   * Type B: from what the maker states, else the usual of such probes. Recent scatter is not used,
   * because a stirred tank scatters for reasons that are no doubt about any one reading, and
   * because sample and basis alone must make the numbers.
   */
  NOISE(Source.NOISE, Distribution.RECTANGULAR, "mS/cm", "1") {
    @Override
    double value(Operating at) {
      if (at.basis().rules() < 2) {
        return 0;
      }
      double stated = at.limits().repeatabilityPercent();
      return (Double.isNaN(stated) ? ASSUMED_REPEATABILITY_PERCENT : stated) / 100 * at.indicated();
    }

    @Override
    double sensitivity(Operating at) {
      return at.perIndicated();
    }

    @Override
    boolean assumed(Operating at) {
      return at.basis().rules() >= 2 && Double.isNaN(at.limits().repeatabilityPercent());
    }
  };

  /** Half-width; temperature sensors in conductivity probes are stated as ±0.2 to ±0.5 K. */
  static final double ASSUMED_TEMPERATURE_ACCURACY_KELVIN = 0.5;

  /** Half-width, % of reading; conductivity probes repeat within 0.2 to 0.5 %. */
  static final double ASSUMED_REPEATABILITY_PERCENT = 0.5;

  private static final BudgetLine[] ALL = values();

  private final Source source;
  private final Distribution distribution;
  private final String unit;
  private final String sensitivityUnit;

  BudgetLine(Source source, Distribution distribution, String unit, String sensitivityUnit) {
    this.source = source;
    this.distribution = distribution;
    this.unit = unit;
    this.sensitivityUnit = sensitivityUnit;
  }

  abstract double value(Operating at);

  abstract double sensitivity(Operating at);

  boolean assumed(Operating at) {
    return false;
  }

  private double milliSiemensPerCm(Operating at) {
    return value(at) / distribution.divisor() * sensitivity(at);
  }

  /** Standard uncertainty of the conductivity at 25 °C, mS/cm. Makes no list. */
  static double combine(Operating at) {
    double sum = 0;
    for (BudgetLine line : ALL) {
      double part = line.milliSiemensPerCm(at);
      sum += part * part;
    }
    return Math.sqrt(sum);
  }

  Contribution contribution(Operating at) {
    return new Contribution(
        source,
        value(at),
        unit,
        distribution,
        sensitivity(at),
        sensitivityUnit,
        milliSiemensPerCm(at),
        assumed(at));
  }
}
