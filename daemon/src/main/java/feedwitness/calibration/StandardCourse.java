package feedwitness.calibration;

import feedwitness.solution.KclSolution;
import feedwitness.solution.KclStandard;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a standard solution conducts at a temperature: mS/cm, °C. Never extrapolates beyond 0 to 50
 * °C or beyond a table of the user's.
 */
public sealed interface StandardCourse {

  /** Name for people, for example {@code KCl 0.01 mol/L}. */
  String label();

  /** mS/cm at 25 °C. */
  double at25();

  /** °C. */
  double minCelsius();

  /** °C. */
  double maxCelsius();

  /** Conductivity at a temperature, or which limit that passes. */
  Outcome at(double celsius);

  /** A temperature without data is an expected outcome. */
  sealed interface Outcome {}

  /**
   * What the standard conducts.
   *
   * @param milliSiemensPerCm mS/cm
   * @param relativePerKelvin relative change with temperature, 1/K
   * @param relativeStandardUncertainty of the course, unitless; the bottle's own is not in it
   */
  record Conducts(
      double milliSiemensPerCm, double relativePerKelvin, double relativeStandardUncertainty)
      implements Outcome {}

  /** All in °C. */
  record OutOfRange(double celsius, double minCelsius, double maxCelsius) implements Outcome {}

  /** Looks a potassium chloride standard up by its strength: {@code KCl 0.01 mol/L}. */
  static Optional<StandardCourse> kcl(String text) {
    String wanted = plain(text);
    for (KclSolution solution : KclSolution.values()) {
      if (wanted.equals(plain(solution.label()))) {
        return Optional.of(new Kcl(solution));
      }
    }
    return Optional.empty();
  }

  /** Labels that {@link #kcl} knows. */
  static List<String> kclLabels() {
    return Stream.of(KclSolution.values()).map(solution -> new Kcl(solution).label()).toList();
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT).replace("kcl", "").replace(" ", "");
  }

  /**
   * Potassium chloride, 0 to 50 °C. Within the temperatures of its printed table with the
   * uncertainty of {@link KclSolution}; outside them it follows the NIST course of the same
   * strength, which printed tables of the same family leave by up to 0.3 %.
   */
  record Kcl(KclSolution solution) implements StandardCourse {
    private static final double BESIDE_THE_TABLE = 0.003;
    private static final double WEAK_BELOW = 5;
    private static final double STRONG_FROM = 50;

    @Override
    public String label() {
      return "KCl " + solution.label();
    }

    @Override
    public double at25() {
      return solution.at25();
    }

    @Override
    public double minCelsius() {
      return KclStandard.MIN_CELSIUS;
    }

    @Override
    public double maxCelsius() {
      return KclStandard.MAX_CELSIUS;
    }

    @Override
    public Outcome at(double celsius) {
      if (!(celsius >= minCelsius() && celsius <= maxCelsius())) {
        return new OutOfRange(celsius, minCelsius(), maxCelsius());
      }
      double value = conductivity(celsius);
      double below = Math.max(minCelsius(), celsius - 0.05);
      double above = Math.min(maxCelsius(), celsius + 0.05);
      double slope = (conductivity(above) - conductivity(below)) / (above - below) / value;
      boolean printed = celsius >= solution.minCelsius() && celsius <= solution.maxCelsius();
      double own = solution.relativeStandardUncertainty();
      return new Conducts(value, slope, printed ? own : Math.max(own, BESIDE_THE_TABLE));
    }

    private double conductivity(double celsius) {
      KclSolution nist =
          at25() < WEAK_BELOW
              ? KclSolution.MOLAL_0_01
              : at25() < STRONG_FROM ? KclSolution.MOLAL_0_1 : KclSolution.MOLAL_1;
      return nist.at(celsius) instanceof KclSolution.Conductivity it
          ? at25() * it.milliSiemensPerCm() / nist.at25()
          : Double.NaN;
    }
  }

  /**
   * As printed on the bottle. Between its rows the ratio to potassium chloride goes in a straight
   * line, which follows the bend of any salt.
   *
   * @param rows two or more, from the coldest; one of 24 to 26 °C must lie within them
   */
  record Table(String label, List<Row> rows) implements StandardCourse {
    private static final double UNCERTAINTY = 0.001;
    private static final double LEAST_PER_KELVIN = 0.005;
    private static final double MOST_PER_KELVIN = 0.05;

    /**
     * Sorts and checks the rows.
     *
     * @throws IllegalArgumentException naming what is unusable and what to do
     */
    public Table {
      rows = rows.stream().sorted(Comparator.comparingDouble(Row::celsius)).toList();
      if (rows.size() < 2
          || rows.get(0).celsius() > 25
          || rows.get(rows.size() - 1).celsius() < 25) {
        throw new IllegalArgumentException(
            "the table has %d rows and does not reach from below to above 25 °C; give at least two rows around 25 °C"
                .formatted(rows.size()));
      }
      for (int i = 1; i < rows.size(); i++) {
        checkStep(rows.get(i - 1), rows.get(i));
      }
    }

    private static void checkStep(Row a, Row b) {
      double kelvin = b.celsius() - a.celsius();
      double perKelvin =
          Math.log(b.milliSiemensPerCm() / a.milliSiemensPerCm()) / Math.max(kelvin, 1e-9);
      if (!(perKelvin >= LEAST_PER_KELVIN && perKelvin <= MOST_PER_KELVIN)) {
        throw new IllegalArgumentException(
            "from %s mS/cm at %s °C to %s mS/cm at %s °C is no change of 0.5 to 5 %% for each kelvin; check both rows for a slip"
                .formatted(a.milliSiemensPerCm(), a.celsius(), b.milliSiemensPerCm(), b.celsius()));
      }
    }

    @Override
    public double at25() {
      return value(25);
    }

    @Override
    public double minCelsius() {
      return rows.get(0).celsius();
    }

    @Override
    public double maxCelsius() {
      return rows.get(rows.size() - 1).celsius();
    }

    @Override
    public Outcome at(double celsius) {
      if (!(celsius >= minCelsius() && celsius <= maxCelsius())) {
        return new OutOfRange(celsius, minCelsius(), maxCelsius());
      }
      double below = Math.max(minCelsius(), celsius - 0.05);
      double above = Math.min(maxCelsius(), celsius + 0.05);
      double value = value(celsius);
      double slope = (value(above) - value(below)) / (above - below) / value;
      return new Conducts(value, slope, UNCERTAINTY);
    }

    private double value(double celsius) {
      int next = 1;
      while (next < rows.size() - 1 && rows.get(next).celsius() < celsius) {
        next++;
      }
      Row a = rows.get(next - 1);
      Row b = rows.get(next);
      double share = (celsius - a.celsius()) / (b.celsius() - a.celsius());
      return KclStandard.ratio(celsius) * (a.toKcl() * (1 - share) + b.toKcl() * share);
    }
  }

  /** One line of a table. */
  record Row(double celsius, double milliSiemensPerCm) {
    /**
     * Checks both.
     *
     * @throws IllegalArgumentException naming the value and its limits
     */
    public Row {
      if (!(celsius >= KclStandard.MIN_CELSIUS && celsius <= KclStandard.MAX_CELSIUS)) {
        throw new IllegalArgumentException(
            "%s °C is outside 0 to 50 °C; leave that row out".formatted(celsius));
      }
      if (!(milliSiemensPerCm > 0 && milliSiemensPerCm <= 500)) {
        throw new IllegalArgumentException(
            "%s mS/cm is not above 0 and at most 500 mS/cm; check the unit"
                .formatted(milliSiemensPerCm));
      }
    }

    private double toKcl() {
      return milliSiemensPerCm / KclStandard.ratio(celsius);
    }
  }
}
