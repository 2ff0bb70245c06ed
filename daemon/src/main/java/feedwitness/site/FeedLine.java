package feedwitness.site;

import feedwitness.feed.FeedStock;
import feedwitness.quantity.PointName;
import java.util.List;
import java.util.Optional;

/**
 * What ties measuring points together: source → tank or stock → injector or siphon mixer → line →
 * drain.
 *
 * @param name as a point's name
 * @param title for people
 * @param source where the water is measured before feed is added; empty if nowhere
 * @param tank where the feed or the stock is measured; empty if nowhere
 * @param line where the feed is measured on its way to the plants
 * @param drain where run-off is measured; empty if nowhere
 * @param second another probe in the same liquid as the line's; empty if there is none
 * @param contact whose flow or pump contact says when water runs; empty if the signal must
 * @param strengths the line should carry, mS/cm at 25 °C, source water included; empty if that is
 *     not known and has to be learnt
 * @param added the same of the part added by feed alone, mS/cm; together with {@code strengths}
 * @param sourceStrength usual conductivity of the source water, mS/cm at 25 °C, for times without a
 *     source reading; NaN if unknown
 * @param stock what is let down, if a recipe or a measured dilution says so: then what the line
 *     should carry is known from the start
 */
public record FeedLine(
    PointName name,
    String title,
    Optional<PointName> source,
    Optional<PointName> tank,
    PointName line,
    Optional<PointName> drain,
    Optional<PointName> second,
    Optional<PointName> contact,
    Mixer mixer,
    List<Double> strengths,
    List<Double> added,
    double sourceStrength,
    DriftLimits limits,
    Optional<FeedStock> stock) {
  public static final double LEAST_STRENGTH = 0.01;
  public static final double MOST_STRENGTH = 20;

  /** At most so many strengths a line. */
  public static final int MOST_STRENGTHS = 8;

  /** Two strengths nearer than this share of the lower cannot be told from a drift. */
  public static final double LEAST_APART = 0.1;

  /**
   * Checks that the strengths can be told apart.
   *
   * @throws IllegalArgumentException saying which cannot
   */
  public FeedLine {
    strengths = strengths.stream().sorted().toList();
    added = added.stream().sorted().toList();
    if (strengths.size() + added.size() > MOST_STRENGTHS) {
      throw new IllegalArgumentException(
          "%d strengths are more than the %d a feed line may have; leave out the rarest"
              .formatted(strengths.size() + added.size(), MOST_STRENGTHS));
    }
    double below = Double.isNaN(sourceStrength) ? 0 : sourceStrength;
    for (double strength : strengths) {
      if (!(strength > below && strength >= LEAST_STRENGTH && strength <= MOST_STRENGTH)) {
        throw new IllegalArgumentException(
            "strength %s mS/cm is not above the source water's %s mS/cm and at most %s mS/cm;"
                    .formatted(strength, Math.max(below, LEAST_STRENGTH), MOST_STRENGTH)
                + " write what the line should carry, source water included");
      }
    }
    for (int i = 1; i < strengths.size(); i++) {
      if (strengths.get(i) < strengths.get(i - 1) * (1 + LEAST_APART)) {
        throw new IllegalArgumentException(
            "strengths %s and %s mS/cm lie closer than 10 %%; write one of them"
                .formatted(strengths.get(i - 1), strengths.get(i)));
      }
    }
  }

  /** Without a known stock, all strengths as totals. */
  public FeedLine(
      PointName name,
      String title,
      Optional<PointName> source,
      Optional<PointName> tank,
      PointName line,
      Optional<PointName> drain,
      Mixer mixer,
      List<Double> strengths,
      double sourceStrength,
      DriftLimits limits) {
    this(
        name,
        title,
        source,
        tank,
        line,
        drain,
        Optional.empty(),
        Optional.empty(),
        mixer,
        strengths,
        List.of(),
        sourceStrength,
        limits,
        Optional.empty());
  }

  /** The same with other strengths. */
  public FeedLine withStrengths(List<Double> totals, List<Double> parts) {
    return new FeedLine(
        name,
        title,
        source,
        tank,
        line,
        drain,
        second,
        contact,
        mixer,
        totals,
        parts,
        sourceStrength,
        limits,
        stock);
  }

  /** The same with a known stock. */
  public FeedLine withStock(FeedStock known) {
    return new FeedLine(
        name,
        title,
        source,
        tank,
        line,
        drain,
        second,
        contact,
        mixer,
        strengths,
        added,
        sourceStrength,
        limits,
        Optional.of(known));
  }

  /**
   * Another probe in the same liquid: the one named, else that of a tank which holds the feed
   * itself.
   */
  public Optional<PointName> secondProbe() {
    return second.or(() -> mixer instanceof Mixer.None ? tank : Optional.empty());
  }

  /**
   * The share of the known stock's feed that the mixer should deliver as it is set; empty if no
   * stock is known.
   */
  public Optional<Double> shareAsSet() {
    return stock.map(
        known ->
            mixer instanceof Mixer.Injector injector && known.hasStock()
                ? known.makes() / injector.litresOfFeed()
                : 1.0);
  }

  /** A line of which only its point is known: everything else is learnt. */
  public static FeedLine ofPoint(PointName line) {
    return new FeedLine(
        line,
        line.text(),
        Optional.empty(),
        Optional.empty(),
        line,
        Optional.empty(),
        new Mixer.None(),
        List.of(),
        Double.NaN,
        DriftLimits.USUAL);
  }
}
