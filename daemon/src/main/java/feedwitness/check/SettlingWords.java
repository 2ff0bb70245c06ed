package feedwitness.check;

/** How readings in a beaker stand, for people. */
final class SettlingWords {
  private SettlingWords() {}

  static String of(Settling.State state) {
    if (state instanceof Settling.Waiting waiting) {
      return waiting.readings() < waiting.needed()
          ? "%d of at least %d readings".formatted(waiting.readings(), waiting.needed())
          : "%d readings, waiting for a whole minute of them".formatted(waiting.readings());
    }
    if (state instanceof Settling.Moving moving) {
      return "still moving: %s mS/cm and %s K a minute"
          .formatted(
              Say.number(moving.milliSiemensPerCmPerMinute(), 2),
              Say.number(moving.kelvinPerMinute(), 2));
    }
    if (state instanceof Settling.Unsteady unsteady) {
      return "unsteady: scatters by %s mS/cm, at most %s expected; shake bubbles off, hold it still"
          .formatted(Say.number(unsteady.scatter(), 2), Say.number(unsteady.allowed(), 2));
    }
    return "at rest";
  }
}
