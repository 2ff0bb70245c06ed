package feedwitness.engine;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The levels a line comes back to. A level counts once for each visit: strength was steady there
 * for two minutes after it had been elsewhere, or it was there for half a day. Levels that differ
 * by less than {@link #SAME} are one. Not for several threads.
 */
final class UsualLevels {
  /** Seen so often, a level is worth asking about. */
  static final int OFTEN = 3;

  private static final double SAME = 0.06;
  private static final double STEADY = 0.03;
  private static final int MOST = 12;
  private static final long STEP_NANOS = Duration.ofSeconds(4).toNanos();
  private static final long GAP_NANOS = Duration.ofSeconds(60).toNanos();
  private static final long STAY_NANOS = Duration.ofHours(12).toNanos();

  /** Two minutes in steps of four seconds. */
  private static final int WINDOW = 30;

  private final List<Level> levels = new ArrayList<>();
  private final List<Double> window = new ArrayList<>();
  private long lastNanos = Long.MIN_VALUE;
  private double stayingAt = Double.NaN;
  private long stayingSince;

  /**
   * A level.
   *
   * @param milliSiemensPerCm mean of its visits, at 25 °C
   * @param answered whether somebody said what it is
   */
  record Level(double milliSiemensPerCm, int visits, boolean answered) {}

  /** A usable reading, in order of time; true if a visit was counted. */
  boolean add(double milliSiemensPerCm, long monotonicNanos) {
    long since = lastNanos == Long.MIN_VALUE ? Long.MAX_VALUE : monotonicNanos - lastNanos;
    if (since < STEP_NANOS && since >= 0) {
      return false;
    }
    if (since > GAP_NANOS || since < 0) {
      window.clear();
    }
    lastNanos = monotonicNanos;
    window.add(milliSiemensPerCm);
    if (window.size() > WINDOW) {
      window.remove(0);
    }
    return window.size() == WINDOW && steady() && arrived(median(), monotonicNanos);
  }

  /** Injectors pulse and probes jitter: a tenth on either side is left out. */
  private boolean steady() {
    double[] sorted = sorted();
    double low = sorted[WINDOW / 10];
    double high = sorted[WINDOW - 1 - WINDOW / 10];
    return high - low <= Math.max(STEADY * median(), STEADY);
  }

  private double median() {
    return sorted()[WINDOW / 2];
  }

  private double[] sorted() {
    double[] sorted = window.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted;
  }

  private boolean arrived(double level, long nanos) {
    if (same(level, stayingAt) && nanos - stayingSince < STAY_NANOS) {
      return false;
    }
    stayingAt = level;
    stayingSince = nanos;
    for (int i = 0; i < levels.size(); i++) {
      Level known = levels.get(i);
      if (same(level, known.milliSiemensPerCm())) {
        int weight = Math.min(known.visits(), 9);
        double mean = (known.milliSiemensPerCm() * weight + level) / (weight + 1);
        levels.set(i, new Level(mean, known.visits() + 1, known.answered()));
        return true;
      }
    }
    if (levels.size() == MOST) {
      levels.stream()
          .filter(each -> !each.answered())
          .min(Comparator.comparingInt(Level::visits))
          .ifPresentOrElse(levels::remove, () -> levels.remove(0));
    }
    levels.add(new Level(level, 1, false));
    return true;
  }

  private static boolean same(double one, double other) {
    return Math.abs(one - other) <= Math.max(SAME * Math.max(one, other), SAME);
  }

  /** The most visited level that nobody has said anything about and that is not otherwise known. */
  Optional<Level> question(java.util.function.DoublePredicate known) {
    return levels.stream()
        .filter(level -> level.visits() >= OFTEN && !level.answered())
        .filter(level -> !known.test(level.milliSiemensPerCm()))
        .max(Comparator.comparingInt(Level::visits));
  }

  /** Somebody said what it is. */
  void answered(Level level) {
    levels.replaceAll(
        each ->
            each.equals(level) ? new Level(each.milliSiemensPerCm(), each.visits(), true) : each);
  }

  /** For {@link #parse}: level, visits and whether it was answered, semicolons between levels. */
  String toText() {
    return String.join(
        ";",
        levels.stream()
            .map(
                level ->
                    String.format(
                        Locale.ROOT,
                        "%.4f %d %b",
                        level.milliSiemensPerCm(),
                        level.visits(),
                        level.answered()))
            .toList());
  }

  /**
   * Reads {@link #toText()}.
   *
   * @throws IllegalArgumentException if it is no such text
   */
  static UsualLevels parse(String text) {
    UsualLevels levels = new UsualLevels();
    for (String level : text.isEmpty() ? new String[0] : text.split(";", -1)) {
      String[] parts = level.split(" ", -1);
      if (parts.length != 3) {
        throw new IllegalArgumentException("'%s' is no level".formatted(level));
      }
      levels.levels.add(
          new Level(
              Double.parseDouble(parts[0]),
              Integer.parseInt(parts[1]),
              Boolean.parseBoolean(parts[2])));
    }
    return levels;
  }
}
