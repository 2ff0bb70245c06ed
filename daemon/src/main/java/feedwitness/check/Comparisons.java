package feedwitness.check;

/** Makes comparisons out of what people type and probes say, or says why not. */
public final class Comparisons {
  private static final double MOST_MILLISIEMENS_PER_CM = 2000;
  private static final double LEAST_CELSIUS = -5;
  private static final double MOST_CELSIUS = 60;

  /** A sample warms on its way: so much apart is still one temperature, K. */
  private static final double MOST_APART_KELVIN = 3;

  private static final int LEAST_READINGS = 20;
  private static final double LEAST_MINUTES = 3;

  private Comparisons() {}

  /** An expected refusal says why. */
  public sealed interface Outcome {}

  /** To be kept. */
  public record Made(ComparisonMade evidence) implements Outcome {}

  /** Why not. */
  public record Refused(String words) implements Outcome {}

  /**
   * What a probe or meter reads at 25 °C.
   *
   * @param milliSiemensPerCm at 25 °C
   * @param standard standard uncertainty, mS/cm
   * @param celsius temperature at which it was measured
   */
  public record Value25(double milliSiemensPerCm, double standard, double celsius) {}

  /**
   * A sample taken beside a probe that cannot be taken out, measured with a meter that was checked.
   *
   * @param meter its name
   * @param meterVerdict of its last check
   * @param tolerancePercent half-width, %
   */
  public static Outcome grabSample(
      Entry entry,
      Value25 probe,
      String meter,
      Value25 sample,
      Verdict meterVerdict,
      double tolerancePercent) {
    if (!conductivity(probe) || !conductivity(sample)) {
      return new Refused(
          "%s mS/cm beside %s mS/cm makes no sense; both are above 0 and at most 2000 mS/cm at 25 °C"
              .formatted(
                  Say.number(probe.milliSiemensPerCm(), 4),
                  Say.number(sample.milliSiemensPerCm(), 4)));
    }
    if (!temperature(sample.celsius())) {
      return new Refused(
          "a sample of %s °C makes no sense; it lies within −5 to 60 °C"
              .formatted(Say.number(sample.celsius(), 4)));
    }
    if (meterVerdict != Verdict.PASS) {
      return new Refused(
          "meter '%s' did not pass its last check (%s); check it in standards first"
              .formatted(meter, meterVerdict.words()));
    }
    double apart = Math.abs(probe.celsius() - sample.celsius());
    String note =
        apart > MOST_APART_KELVIN
            ? "sample and probe were %s K apart; compensation adds doubt"
                .formatted(Say.fixed(apart, 1))
            : "";
    return new Made(
        new ComparisonMade(
            entry,
            ComparisonMade.Type.GRAB_SAMPLE,
            meter,
            probe.milliSiemensPerCm(),
            probe.standard(),
            sample.milliSiemensPerCm(),
            sample.standard(),
            tolerancePercent,
            note));
  }

  private static boolean conductivity(Value25 value) {
    return value.milliSiemensPerCm() > 0
        && value.milliSiemensPerCm() <= MOST_MILLISIEMENS_PER_CM
        && value.standard() >= 0;
  }

  /**
   * Line beside source while nothing is injected: a free check at the low end.
   *
   * @param line mean over the period
   * @param source mean over the same period
   * @param readings of the line in it
   * @param minutes how long it lasted
   */
  public static Outcome plainWater(
      Entry entry,
      Value25 line,
      String sourceName,
      Value25 source,
      int readings,
      double minutes,
      double tolerancePercent) {
    if (!conductivity(line) || !conductivity(source)) {
      return new Refused("line or source has no conductivity in that period");
    }
    if (readings < LEAST_READINGS || minutes < LEAST_MINUTES) {
      return new Refused(
          "%d readings in %s minutes are too few; plain water must run for 3 minutes with 20 readings"
              .formatted(readings, Say.number(minutes, 2)));
    }
    return new Made(
        new ComparisonMade(
            entry,
            ComparisonMade.Type.PLAIN_WATER,
            sourceName,
            line.milliSiemensPerCm(),
            line.standard(),
            source.milliSiemensPerCm(),
            source.standard(),
            tolerancePercent,
            "%d readings in %s minutes".formatted(readings, Say.number(minutes, 2))));
  }

  /**
   * Temperature of a probe beside a reference thermometer in the same liquid.
   *
   * @param celsius of the probe, with its standard uncertainty for this comparison: resolution and
   *     scatter
   * @param referenceCelsius of the thermometer, with that of its certificate
   * @param toleranceKelvin half-width, K
   */
  public static Outcome thermometer(
      Entry entry,
      double celsius,
      double standard,
      String thermometer,
      double referenceCelsius,
      double referenceStandard,
      double toleranceKelvin) {
    if (!temperature(celsius) || !temperature(referenceCelsius)) {
      return new Refused(
          "%s °C beside %s °C makes no sense; both lie within −5 to 60 °C"
              .formatted(Say.number(celsius, 4), Say.number(referenceCelsius, 4)));
    }
    return new Made(
        new ComparisonMade(
            entry,
            ComparisonMade.Type.THERMOMETER,
            thermometer,
            celsius,
            standard,
            referenceCelsius,
            referenceStandard,
            toleranceKelvin,
            ""));
  }

  private static boolean temperature(double celsius) {
    return celsius >= LEAST_CELSIUS && celsius <= MOST_CELSIUS;
  }
}
