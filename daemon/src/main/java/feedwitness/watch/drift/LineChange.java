package feedwitness.watch.drift;

/** Something done to a feed line on purpose, as it is logged. */
public enum LineChange {
  /** Another recipe, or another stock by intention. What is normal is learnt anew. */
  RECIPE(true, "recipe changed"),
  /** The injector's ratio or the mixer's dial was set otherwise. What is normal is learnt anew. */
  RATIO(true, "ratio or dial changed"),
  /** The injector was serviced. What is normal is learnt anew. */
  SERVICED(true, "injector serviced"),
  /** A probe was calibrated or adjusted. What is normal is learnt anew. */
  CALIBRATED(true, "probe calibrated"),
  /** The line's probe was cleaned. What is normal is learnt anew. */
  CLEANED(true, "probe cleaned"),
  /** The barrel was filled with the same stock. What is normal stays: it should be the same. */
  STOCK_FILLED(false, "stock filled"),
  /**
   * The injector is set to inject nothing (a ratio of zero). Nothing is judged until the next
   * change.
   */
  TURNED_OFF(true, "injector set to inject nothing");

  private final boolean rebaselines;
  private final String words;

  LineChange(boolean rebaselines, String words) {
    this.rebaselines = rebaselines;
    this.words = words;
  }

  /** Whether what is normal is learnt anew. */
  public boolean rebaselines() {
    return rebaselines;
  }

  /** For people. */
  public String words() {
    return words;
  }
}
