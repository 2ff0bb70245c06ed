package feedwitness.simulate;

import feedwitness.solution.KclStandard;
import java.util.Random;

/**
 * A conductivity probe without compensation and its temperature sensor. Indicates once a simulated
 * second, whether asked or not, so what it says does not depend on who reads it how often.
 *
 * <p>Fouling costs sensitivity, more at high conductivity. In air the cell reads near zero, but
 * often holds a drop and reads part-way for minutes. A calibration standard is potassium chloride
 * at 21.5 °C.
 */
final class Probe {
  static final double STANDARD_CELSIUS = 21.5;
  private static final double DRY = 0.0015;
  private static final double NOISE_FLOOR = 0.0002;
  private static final double CELSIUS_NOISE = 0.015;
  private static final double DROP_SECONDS = 110;

  /** What the probe is exposed to, mS/cm at {@code celsius}. */
  private record Exposure(double conductivity, double celsius) {}

  private final ProbeSpec spec;
  private final ConductivityFormula formula;
  private final Random random;
  private double gain;
  private double fouled;
  private double cell;
  private double sensor;
  private double drop;
  private boolean wasInAir;
  private double indicated;
  private double indicatedCelsius;

  Probe(ProbeSpec spec, ConductivityFormula formula, Random random, Liquid start) {
    this.spec = spec;
    this.formula = formula;
    this.random = random;
    gain = spec.gain();
    fouled = spec.fouled();
    cell = formula.raw(start);
    sensor = start.celsius();
    indicate();
  }

  /**
   * One simulated second.
   *
   * @param liquid where it is mounted
   * @param airCelsius around it when it hangs in air
   */
  void step(Liquid liquid, double airCelsius, ProbeFault fault) {
    Exposure exposure = exposure(liquid, airCelsius, fault);
    cell += (exposure.conductivity() - cell) / (spec.conductivitySeconds() + 0.5);
    sensor += (exposure.celsius() - sensor) / (spec.temperatureSeconds() + 0.5);
    double exposed = Math.min(2, 0.5 + cell / 3);
    fouled = Math.min(0.95, fouled + spec.foulingPerDay() / Moment.DAY * exposed + fault.fouling());
    double before = indicated;
    double beforeCelsius = indicatedCelsius;
    indicate();
    if (fault.stuck()) {
      indicated = before;
      indicatedCelsius = beforeCelsius;
    }
    if (!Double.isNaN(fault.temperature())) {
      indicatedCelsius = fault.temperature();
    }
  }

  private Exposure exposure(Liquid liquid, double airCelsius, ProbeFault fault) {
    if (fault.standard() > 0) {
      wasInAir = false;
      return new Exposure(fault.standard() * KclStandard.ratio(STANDARD_CELSIUS), STANDARD_CELSIUS);
    }
    if (!fault.inAir()) {
      wasInAir = false;
      return new Exposure(formula.raw(liquid), liquid.celsius());
    }
    if (!wasInAir) {
      wasInAir = true;
      boolean holdsOne = random.nextDouble() < 0.6;
      drop = holdsOne ? cell * (0.2 + 0.35 * random.nextDouble()) : 0;
    }
    drop -= drop / DROP_SECONDS;
    return new Exposure(DRY + drop, airCelsius);
  }

  private void indicate() {
    double noisy =
        cell * sensitivity() * (1 + spec.noise() * random.nextGaussian())
            + NOISE_FLOOR * random.nextGaussian();
    indicated = rounded(Math.max(0, noisy), spec.conductivityStep());
    indicatedCelsius = rounded(sensor + CELSIUS_NOISE * random.nextGaussian(), spec.celsiusStep());
  }

  private static double rounded(double value, double step) {
    return Math.rint(value / step) * step;
  }

  /** What it shows over what it should show, at what it is exposed to now; 1 is right. */
  double sensitivity() {
    double loss = Math.min(0.95, fouled * (0.7 + 0.15 * cell));
    return gain * (1 - loss);
  }

  /** Scale and deposit are gone; the cell constant stays as wrong as it was. */
  void clean() {
    fouled = 0;
  }

  /** Adjusted in a standard, so that it shows this share too much, for example −0.002. */
  void adjust(double residual) {
    gain = (1 + residual) / (1 - fouled);
  }

  /** As shown, raw, mS/cm at the liquid's temperature, rounded to its resolution. */
  double indicated() {
    return indicated;
  }

  /** As shown, °C, rounded to its resolution. */
  double indicatedCelsius() {
    return indicatedCelsius;
  }
}
