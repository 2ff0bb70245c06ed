package feedwitness.quality;

import feedwitness.quality.Recording.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * A background recording with faults put into it, drawn by a seed: what a probe does when it fails.
 *
 * @param recording with the faults
 * @param faulty which rows were changed
 * @param events the faults, in the order of time
 */
record InjectedFaults(Recording recording, List<Boolean> faulty, List<Event> events) {

  /** What fails. */
  enum Kind {
    SPIKE,
    STUCK,
    AIR,
    DROPOUT,
    NOISE,
    TEMPERATURE
  }

  /** Rows from {@code first} up to, not including, {@code end}. */
  record Event(Kind kind, int first, int end) {}

  InjectedFaults {
    faulty = List.copyOf(faulty);
    events = List.copyOf(events);
  }

  /**
   * Puts faults of every kind in turn into a background, apart from each other.
   *
   * @param from first row that may be changed; the judge learns from those before
   * @param gap least number of sound rows between two faults
   * @param stuckRows how long a stuck sensor repeats itself: longer than this sensor does in health
   */
  static InjectedFaults into(
      Recording background, long seed, int from, int gap, int stuckRows, int number) {
    Random random = new Random(seed);
    List<Row> rows = new ArrayList<>(background.rows());
    boolean[] faulty = new boolean[rows.size()];
    List<Event> events = new ArrayList<>();
    int at = from;
    for (int i = 0; i < number; i++) {
      Kind kind = Kind.values()[i % Kind.values().length];
      at += gap + random.nextInt(gap);
      int length = length(kind, stuckRows, random);
      while (at + length + 1 < rows.size() && !sound(background, at - gap / 2, at + length + 1)) {
        at++;
      }
      if (at + length + gap >= rows.size()) {
        break;
      }
      inject(kind, rows, at, length, background.at25(), random);
      Arrays.fill(faulty, at, at + length, true);
      events.add(new Event(kind, at, at + length));
      at += length;
    }
    List<Boolean> marks = new ArrayList<>();
    for (boolean mark : faulty) {
      marks.add(mark);
    }
    return new InjectedFaults(background.with(rows), marks, events);
  }

  private static int length(Kind kind, int stuckRows, Random random) {
    return switch (kind) {
      case SPIKE -> 1 + random.nextInt(3);
      case STUCK -> stuckRows + random.nextInt(stuckRows / 2);
      case AIR -> 12 + random.nextInt(60);
      case DROPOUT -> 2 + random.nextInt(30);
      case NOISE, TEMPERATURE -> 30 + random.nextInt(60);
    };
  }

  /** Faults are put only where the background has none of its own: no gaps and no dead readings. */
  private static boolean sound(Recording background, int from, int to) {
    for (int i = Math.max(0, from); i < to; i++) {
      if (brokenAlready(background.rows().get(i))) {
        return false;
      }
    }
    return true;
  }

  static boolean brokenAlready(Row row) {
    return !(row.milliSiemensPerCm() > 0.02) || !(row.celsius() > 0.5);
  }

  private static void inject(
      Kind kind, List<Row> rows, int at, int length, boolean both, Random random) {
    Row first = rows.get(at - 1);
    double size = (0.1 + 0.5 * random.nextDouble()) * (random.nextBoolean() ? 1 : -0.6);
    double strength = 0.05 + 0.1 * random.nextDouble();
    int choice = random.nextInt(4);
    int held = random.nextInt(6);
    for (int i = 0; i < length; i++) {
      Row row = rows.get(at + i);
      double kappa = row.milliSiemensPerCm();
      double celsius = row.celsius();
      switch (kind) {
        case SPIKE -> kappa *= 1 + size;
        case STUCK -> {
          kappa = first.milliSiemensPerCm();
          celsius = both ? first.celsius() : celsius;
        }
        case AIR -> kappa *= i < held ? 0.55 - 0.04 * i : 0.03 * random.nextDouble();
        case DROPOUT -> {
          kappa = choice == 0 ? Double.NaN : 0;
          celsius = choice < 3 ? celsius * (choice == 0 ? 1 : 0) : celsius;
        }
        case NOISE -> kappa *= Math.exp(strength * random.nextGaussian());
        case TEMPERATURE ->
            celsius =
                switch (choice) {
                  case 0 -> -127;
                  case 1 -> 85;
                  case 2 -> 0;
                  default -> celsius + 20 * (size > 0 ? 0.2 + size : -0.2 + size);
                };
      }
      rows.set(at + i, new Row(row.seconds(), kappa, celsius));
    }
  }
}
