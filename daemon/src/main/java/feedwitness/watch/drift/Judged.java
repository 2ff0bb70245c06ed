package feedwitness.watch.drift;

import org.jspecify.annotations.Nullable;

/**
 * An event as the chart sees it.
 *
 * @param level which strength
 * @param value logarithm of the delivered share
 * @param seconds when it began
 */
record Judged(int level, double value, double seconds) {

  static void write(@Nullable Judged event, StateWriter out) {
    out.truth(event != null);
    if (event != null) {
      out.whole(event.level).number(event.value).number(event.seconds);
    }
  }

  static @Nullable Judged read(StateReader in) {
    return in.truth() ? new Judged(in.count(Levels.MOST - 1), in.number(), in.number()) : null;
  }
}
