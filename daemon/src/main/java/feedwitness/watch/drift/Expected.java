package feedwitness.watch.drift;

import feedwitness.feed.FeedStock;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import feedwitness.watch.drift.DriftStanding.From;
import java.util.stream.DoubleStream;

/**
 * What the line should carry: by the recipe or the measured stock from the start, else by the
 * strengths of the configuration until what is normal has been learnt.
 */
final class Expected {
  private static final double NEARLY_CERTAIN = 2;

  /** Events in a row that lie off, or are right again. */
  private static final int IN_A_ROW = 3;

  /** Further off, as a logarithm, it is a strange strength rather than one that is off. */
  private static final double FAR = 0.3;

  private final FeedLine line;
  private final DeliveredShare share;
  private final InjectorChart chart;
  private double measured = Double.NaN;
  private double water;
  private double uncertainty = Double.NaN;
  private int run;
  private boolean told;
  private double off = Double.NaN;

  Expected(FeedLine line, DeliveredShare share, InjectorChart chart) {
    this.line = line;
    this.share = share;
    this.chart = chart;
  }

  /**
   * An event was measured.
   *
   * @param source mS/cm at 25 °C; 0 if unknown
   * @param ofSource standard uncertainty of it, mS/cm; NaN if unknown
   */
  void measured(LineEvent event, double source, double ofSource) {
    measured = event.conductivity25();
    water = source;
    double ofLine = Double.isNaN(event.uncertainty()) ? 0 : event.uncertainty();
    uncertainty = Math.hypot(ofLine, Double.isNaN(ofSource) ? 0 : ofSource);
  }

  /** Logarithms of the shares that the configuration expects, one for each strength. */
  double[] logs(double nominal) {
    double[] shares =
        DoubleStream.concat(
                line.strengths().stream().mapToDouble(Double::doubleValue),
                line.added().stream().mapToDouble(part -> part + nominal))
            .map(strength -> share.of(strength, nominal))
            .filter(each -> each > 0)
            .map(Math::log)
            .toArray();
    return shares.length > 0 || line.stock().isEmpty()
        ? shares
        : new double[] {Math.log(line.shareAsSet().orElse(1.0))};
  }

  From from() {
    Levels levels = chart.levels();
    int level = chart.lastLevel();
    if (line.stock().isPresent() && (level < levels.names() || level == Levels.UNKNOWN)) {
      return line.stock().get().measured() ? From.STOCK : From.RECIPE;
    }
    if (level == Levels.UNKNOWN) {
      return From.NOTHING;
    }
    return chart.baseline().count(level) > 0
        ? From.LEARNT
        : level < levels.names() ? From.STRENGTHS : From.NOTHING;
  }

  /** The share that should be delivered; NaN if unknown. */
  double expectedShare() {
    Levels levels = chart.levels();
    int level = chart.lastLevel();
    return switch (from()) {
      case RECIPE, STOCK ->
          level == Levels.UNKNOWN
              ? levels.names() > 1 ? Double.NaN : line.shareAsSet().orElse(Double.NaN)
              : Math.exp(levels.named(level));
      case STRENGTHS -> Math.exp(levels.named(level));
      case LEARNT -> Math.exp(chart.baseline().mean(level));
      case NOTHING -> Double.NaN;
    };
  }

  /** mS/cm at 25 °C in the water there is; NaN if unknown. */
  double strength(double waterNow) {
    return share.line(expectedShare(), Double.isNaN(measured) ? waterNow : water);
  }

  /** What was delivered over what should be, %. */
  double percent() {
    return 100 * delivered() / expectedShare();
  }

  private double delivered() {
    return share.of(measured, water);
  }

  /** Of {@link #percent()}, nearly certain: probes, model and stock, or the scatter of events. */
  double plusMinusPercent() {
    return switch (from()) {
      case RECIPE, STOCK -> Double.isNaN(measured) ? Double.NaN : 100 * NEARLY_CERTAIN * relative();
      case LEARNT -> 250 * chart.baseline().standardError(1);
      default -> Double.NaN;
    };
  }

  private double relative() {
    double added = measured - water;
    double ofStock = line.stock().map(FeedStock::uncertainty).orElse(0.0);
    return Math.hypot(ofStock, added > 0 ? uncertainty / added : 0);
  }

  /** Of {@link #strength}, mS/cm, nearly certain; NaN unless a recipe or the stock says it. */
  double strengthPlusMinus(double waterNow) {
    boolean solved = from() == From.RECIPE || from() == From.STOCK;
    double ofWater = Double.isNaN(measured) ? waterNow : water;
    return solved
        ? NEARLY_CERTAIN
            * line.stock().map(FeedStock::uncertainty).orElse(0.0)
            * (strength(waterNow) - (ofWater > 0 ? ofWater : line.stock().get().water()))
        : Double.NaN;
  }

  /** Litres of feed that one of stock really made; NaN if unknown. */
  double ratio() {
    if (!(line.mixer() instanceof Mixer.Injector injector)) {
      return Double.NaN;
    }
    return line.stock()
        .filter(FeedStock::hasStock)
        .map(stock -> stock.makes() / delivered())
        .orElse(100 * injector.litresOfFeed() / percent());
  }

  /** Litres of feed that one of stock should make at the strength of the last event. */
  double ratioExpected() {
    if (!(line.mixer() instanceof Mixer.Injector injector)) {
      return Double.NaN;
    }
    boolean solved = from() == From.RECIPE || from() == From.STOCK;
    return solved && line.stock().get().hasStock()
        ? line.stock().get().makes() / expectedShare()
        : injector.litresOfFeed();
  }

  /** What an event says of the recipe, before what is normal has been learnt. */
  enum Said {
    NOTHING,
    OFF,
    /** It may be right again: not to be judged yet. */
    WAIT,
    RIGHT_AGAIN
  }

  /**
   * Takes an event before it is judged, until what is normal is known.
   *
   * @param value logarithm of the delivered share
   */
  Said judge(double value) {
    off = nearest(value);
    boolean early =
        line.stock().isPresent()
            && chart.baseline().count() < InjectorChart.LEARNT
            && Math.abs(off) < FAR;
    if (!early) {
      return Said.NOTHING;
    }
    double ofStock = NEARLY_CERTAIN * relative();
    boolean wrong = Math.abs(offPercent()) >= Math.max(line.limits().alarmPercent(), 100 * ofStock);
    run = wrong ? Math.max(0, run) + 1 : Math.min(0, run) - 1;
    if (run == IN_A_ROW) {
      told = true;
      return Said.OFF;
    }
    if (!told || run > 0) {
      return Said.NOTHING;
    }
    told = run > -IN_A_ROW;
    return told ? Said.WAIT : Said.RIGHT_AGAIN;
  }

  private double nearest(double value) {
    double best = Double.NaN;
    for (int i = 0; i < chart.levels().names(); i++) {
      double away = value - chart.levels().named(i);
      best = Math.abs(away) < Math.abs(best) || Double.isNaN(best) ? away : best;
    }
    return best;
  }

  /** How far the last event lies off the nearest strength, %. */
  double offPercent() {
    return 100 * Math.expm1(off);
  }

  /** The strength it should have had, mS/cm at 25 °C. */
  double offStrength() {
    return share.line(delivered() * Math.exp(-off), water);
  }

  /** Of {@link #offPercent}, nearly certain. */
  double offPlusMinus() {
    return 100 * NEARLY_CERTAIN * relative();
  }

  /** What is normal is learnt anew. */
  void anew() {
    run = 0;
    told = false;
  }

  void write(StateWriter out) {
    out.number(measured).number(water).number(uncertainty).whole(run).truth(told);
  }

  void read(StateReader in) {
    measured = in.number();
    water = in.number();
    uncertainty = in.number();
    run = (int) in.whole();
    told = in.truth();
  }
}
