package feedwitness.store;

/** Widths at which roll-ups are kept. */
enum Level {
  MINUTE(60_000),
  QUARTER(900_000),
  HOUR(ChunkKey.HOUR_MILLIS);

  private final long millis;

  Level(long millis) {
    this.millis = millis;
  }

  long millis() {
    return millis;
  }
}
