package feedwitness.quality;

/** Whether being dry is normal at this point: a tray is dry most of the day, every day. */
final class DryHabit {
  private static final double MEMORY_SECONDS = 86_400;
  private static final double LONGEST_PAUSE = 3600;
  private static final double SHARE = 0.2;
  private static final double SPELLS = 1.5;

  private double drySeconds;
  private double allSeconds;
  private double spells;
  private double spellSeconds;
  private double last = Double.NaN;

  /** Readings mostly come at one interval, and an exponential is dear. */
  private double interval = Double.NaN;

  private double keep = 1;
  private double keepSpells = 1;

  void add(double seconds, boolean dry) {
    double passed = seconds - last;
    last = seconds;
    if (!(passed > 0)) {
      return;
    }
    passed = Math.min(passed, LONGEST_PAUSE);
    if (passed != interval) {
      interval = passed;
      keep = Math.exp(-passed / MEMORY_SECONDS);
      keepSpells = Math.exp(-passed / (7 * MEMORY_SECONDS));
    }
    drySeconds *= keep;
    allSeconds = allSeconds * keep + passed;
    spells *= keepSpells;
    if (dry) {
      spellSeconds += passed;
    }
  }

  /** Water came back: the spell was a dry spell of a sound probe. */
  void wetAgain() {
    drySeconds += Math.min(spellSeconds, MEMORY_SECONDS);
    spells += spellSeconds > 0 ? 1 : 0;
    spellSeconds = 0;
  }

  boolean normal() {
    return spells >= SPELLS && drySeconds >= SHARE * allSeconds;
  }
}
