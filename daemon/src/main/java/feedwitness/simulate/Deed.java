package feedwitness.simulate;

import java.time.Duration;

/**
 * One thing that happens in the nursery.
 *
 * @param target what it happens to; {@link Target#NURSERY} where the kind says so itself
 * @param amount in the unit of its kind
 * @param duration how long it lasts or takes to develop; zero for what is done at once
 */
record Deed(DeedKind kind, Target target, double amount, Duration duration) {

  /** What a deed can happen to. */
  enum Target {
    SOURCE,
    TANK,
    LINE,
    BUS,
    NURSERY;

    /** As written in a schedule. */
    String text() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** For example {@code line in-air}. */
  String text() {
    return target == Target.NURSERY ? kind.text() : target.text() + " " + kind.text();
  }
}
