package feedwitness.watch.diagnosis;

/** What may be behind a drift. */
public enum Cause {
  INJECTOR("injector: worn, or a check valve sticks"),
  LOST_PRIME("injector lost its prime, or the suction strainer is blocked"),
  OUTSIDE_FLOW("flow outside the injector's range"),
  PLAIN_WATER("plain water: a flush, or the bypass is open"),
  STOCK_EMPTY("stock has run out"),
  STOCK_STRENGTH("stock of another strength, or not mixed through"),
  OTHER_STRENGTH("set to another strength"),
  PROBE_FOULED("line probe fouled or scaled"),
  SOURCE_CHANGED("source water changed"),
  TEMPERATURE_SENSOR("temperature sensor failed"),
  ADJUSTED("probe adjusted or calibrated");

  private final String words;

  Cause(String words) {
    this.words = words;
  }

  /** For people. */
  public String words() {
    return words;
  }
}
