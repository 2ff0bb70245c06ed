package feedwitness.check;

import feedwitness.quantity.Stamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Finds periods in which plain water runs through a line: it has come down from what is usually fed
 * to near the source and stays steady. Then line and source must read the same, a free check at the
 * low end. That the two are near is the sign, so it can show errors up to a quarter and no larger
 * ones. Belongs to one thread.
 */
public final class PlainWaterWatch {
  private static final double NEAR = 0.25;
  private static final double FED = 1.5;
  private static final double STEADY = 0.02;
  private static final int MOST = 2000;

  private final CheckSubject line;
  private final String sourceName;
  private final double tolerancePercent;
  private final List<Comparisons.Value25> period = new ArrayList<>();
  private final List<Comparisons.Value25> sourcePeriod = new ArrayList<>();

  private Optional<Comparisons.Value25> source = Optional.empty();
  private boolean fedBefore;
  private double begun;
  private double ended;
  private Stamp last = new Stamp(0, 0, 0, 0, false);

  /**
   * For one line.
   *
   * @param sourceName for people
   * @param tolerancePercent half-width, %
   */
  public PlainWaterWatch(CheckSubject line, String sourceName, double tolerancePercent) {
    this.line = line;
    this.sourceName = sourceName;
    this.tolerancePercent = tolerancePercent;
  }

  /** A reading of the source at 25 °C, with its standard uncertainty. */
  public void source(Comparisons.Value25 value) {
    source = Optional.of(value);
  }

  /** A reading of the line; the comparison when a period has ended that was long enough. */
  public Optional<ComparisonMade> line(Stamp stamp, Comparisons.Value25 value) {
    if (source.isEmpty()) {
      return Optional.empty();
    }
    double ratio = value.milliSiemensPerCm() / source.get().milliSiemensPerCm();
    if (ratio >= FED) {
      Optional<ComparisonMade> made = end();
      fedBefore = true;
      return made;
    }
    if (Math.abs(ratio - 1) > NEAR || !fedBefore) {
      return end();
    }
    double now = stamp.monotonicNanos() / 1e9;
    // While feed is still being washed out it falls: begin anew until it is steady. When feed comes
    // back it rises through the same levels: what was steady until then is whole.
    if (!period.isEmpty() && !steady(value)) {
      Optional<ComparisonMade> made = end();
      if (made.isPresent()) {
        fedBefore = false;
        return made;
      }
    }
    if (period.isEmpty()) {
      begun = now;
    }
    if (period.size() < MOST) {
      period.add(value);
      sourcePeriod.add(source.get());
      ended = now;
      last = stamp;
    }
    return Optional.empty();
  }

  private boolean steady(Comparisons.Value25 value) {
    double mean = mean(period, Comparisons.Value25::milliSiemensPerCm);
    return Math.abs(value.milliSiemensPerCm() / mean - 1) <= STEADY;
  }

  private void forget() {
    period.clear();
    sourcePeriod.clear();
  }

  private Optional<ComparisonMade> end() {
    if (period.isEmpty()) {
      return Optional.empty();
    }
    Comparisons.Outcome outcome =
        Comparisons.plainWater(
            new Entry("", line, last.wall(), CheckEvidence.BY_ITSELF),
            mean(period),
            sourceName,
            mean(sourcePeriod),
            period.size(),
            (ended - begun) / 60,
            tolerancePercent);
    forget();
    return outcome instanceof Comparisons.Made made
        ? Optional.of(made.evidence())
        : Optional.empty();
  }

  /** Mean value; the doubts of one probe go together, so they are averaged, not divided. */
  private static Comparisons.Value25 mean(List<Comparisons.Value25> values) {
    return new Comparisons.Value25(
        mean(values, Comparisons.Value25::milliSiemensPerCm),
        mean(values, Comparisons.Value25::standard),
        mean(values, Comparisons.Value25::celsius));
  }

  private static double mean(
      List<Comparisons.Value25> values, ToDoubleFunction<Comparisons.Value25> part) {
    return values.stream().mapToDouble(part).average().orElse(Double.NaN);
  }
}
