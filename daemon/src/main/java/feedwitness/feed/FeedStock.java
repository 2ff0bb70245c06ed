package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A known feed in a known water, and the stock it is let down from: what the line should carry at
 * any share of it, solved with the conductivity model. Share 1 is the feed as the recipe has it.
 *
 * @param title for people
 * @param makes litres of feed of share 1 from one litre of stock; NaN if it is made without stock
 * @param water strength of the water, mS/cm at 25 °C
 * @param step from one share of the table to the next
 * @param strengths mS/cm at 25 °C at shares 0, {@code step}, 2 {@code step} …; rising
 * @param uncertainty relative standard uncertainty of what feed adds
 * @param measured whether the stock was measured rather than taken as weighed
 */
public record FeedStock(
    String title,
    double makes,
    double water,
    double step,
    List<Double> strengths,
    double uncertainty,
    boolean measured) {
  /** Measuring cup, syringe and meter: relative standard uncertainties of a measured dilution. */
  private static final double CUP = 0.02;

  private static final double METER = 0.02;

  private static final double STEP = 1.0 / 16;
  private static final int MOST_STEPS = 128;
  private static final int LEAST_STEPS = 20;

  /**
   * Checks the table.
   *
   * @throws IllegalArgumentException if it has fewer than two strengths or does not rise
   */
  public FeedStock {
    strengths = List.copyOf(strengths);
    for (int i = 1; i < strengths.size(); i++) {
      if (!(strengths.get(i) > strengths.get(i - 1))) {
        throw new IllegalArgumentException("strength does not rise with the feed");
      }
    }
    if (strengths.size() < 2) {
      throw new IllegalArgumentException("a feed that adds no conductivity");
    }
  }

  /** Of a recipe's feed, as far as the model reaches; empty where it does not reach the feed. */
  static Optional<FeedStock> of(String title, Blend feed, double makes, Foresight foresight) {
    List<Double> strengths = new ArrayList<>();
    for (int i = 0; i <= MOST_STEPS; i++) {
      double strength = feed.scaled(i * STEP).strength(foresight);
      if (!(strengths.isEmpty() || strength > strengths.get(i - 1))) {
        break;
      }
      strengths.add(strength);
    }
    if (strengths.size() <= LEAST_STEPS) {
      return Optional.empty();
    }
    double added = feed.strength(foresight) - strengths.get(0);
    return Optional.of(
        new FeedStock(
            title,
            makes,
            strengths.get(0),
            STEP,
            strengths,
            feed.uncertainty(foresight) / added,
            false));
  }

  /** mS/cm at 25 °C at a share, in the recipe's own water; beyond the table as at its ends. */
  public double strength(double share) {
    int i = (int) Math.max(0, Math.min(strengths.size() - 2.0, Math.floor(share / step)));
    return strengths.get(i) + (share / step - i) * (strengths.get(i + 1) - strengths.get(i));
  }

  /** The share that gives a strength in the recipe's own water; 0 or less if water alone does. */
  public double share(double strength) {
    int i = 0;
    while (i < strengths.size() - 2 && strengths.get(i + 1) < strength) {
      i++;
    }
    double across = strengths.get(i + 1) - strengths.get(i);
    return step * (i + (strength - strengths.get(i)) / across);
  }

  /**
   * The same feed from a stock that was measured: let down with the feed's own water, it read so.
   *
   * @param reads mS/cm at 25 °C, above the water's
   * @param dilution litres that one litre of stock was made up to
   * @throws IllegalArgumentException {@code reason; remedy} if it cannot have read so
   */
  public FeedStock measured(double reads, double dilution) {
    if (!(reads > water)) {
      throw new IllegalArgumentException(
          "the water alone has %s mS/cm; measure the stock let down with that water"
              .formatted(Text.fixed(water, 2)));
    }
    if (reads > strengths.get(strengths.size() - 1)) {
      throw new IllegalArgumentException(
          "%s mS/cm is more than can be solved back; let the stock down further"
              .formatted(Text.fixed(reads, 2)));
    }
    return new FeedStock(
        title, share(reads) * dilution, water, step, strengths, Math.hypot(CUP, METER), true);
  }

  /** Whether one litre of its stock is known to make so many litres of feed. */
  public boolean hasStock() {
    return !Double.isNaN(makes);
  }

  /** What a state that rests on it must find again. */
  public String fingerprint() {
    return String.format(Locale.ROOT, "%.6g/%.6g/%.6g", makes, water, strength(1));
  }
}
