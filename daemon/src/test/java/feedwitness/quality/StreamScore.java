package feedwitness.quality;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * Flags of a stream series against its technicians' labels.
 *
 * <p>A row is labelled when its quality code is not NULL or its corrected value is absent. A
 * labelled row can be seen in one signal when its value is missing, at most 1 µS/cm, or more than 8
 * % from the median of unlabelled rows within half a day; a labelled run half of whose rows can be
 * seen counts whole. Labelled rows that cannot be seen (constant offsets, slow drift) are left out.
 * Matches allow one row on either side. Flags that are {@code unknown}, or speak of temperature,
 * are no verdict. False episodes: flagged rows away from any label, more than an hour after the
 * last.
 *
 * @param seen rows that can be seen as faulty
 * @param hit of these, flagged
 * @param raised rows flagged and scored
 * @param right of these, rightly
 * @param episodes false episodes
 * @param days length of the series
 */
record StreamScore(int seen, int hit, int raised, int right, int episodes, double days) {
  private static final int HALF_DAY = 48;
  private static final int ROWS_AN_HOUR = 4;
  private static final int ROWS_A_DAY = 96;

  double recall() {
    return hit / (double) Math.max(1, seen);
  }

  double precision() {
    return right / (double) Math.max(1, raised);
  }

  double falseEpisodesIn30Days() {
    return episodes / days * 30;
  }

  StreamScore plus(StreamScore other) {
    return new StreamScore(
        seen + other.seen,
        hit + other.hit,
        raised + other.raised,
        right + other.right,
        episodes + other.episodes,
        days + other.days);
  }

  static StreamScore of(Path file, List<Flags> flags) throws IOException {
    List<String> lines = Files.readAllLines(file);
    List<String> names = Arrays.asList(lines.get(0).split(",", -1));
    int n = lines.size() - 1;
    double[] value = new double[n];
    boolean[] labelled = new boolean[n];
    for (int i = 0; i < n; i++) {
      String[] cells = lines.get(i + 1).split(",", -1);
      value[i] = Recording.number(cells[names.indexOf("cond")]);
      labelled[i] =
          !cells[names.indexOf("cond_qual")].equals("NULL")
              || Double.isNaN(Recording.number(cells[names.indexOf("cond_cor")]));
    }
    boolean[] flagged = new boolean[n];
    for (int i = 0; i < n; i++) {
      flagged[i] = aboutConductivity(flags.get(i));
    }
    return of(flagged, labelled, seen(value, labelled));
  }

  /** Whether any flag is a verdict on the conductivity. */
  static boolean aboutConductivity(Flags flags) {
    return flags.list().stream()
        .anyMatch(f -> f != QualityFlag.UNKNOWN && !f.code().startsWith("temperature"));
  }

  private static boolean[] seen(double[] value, boolean[] labelled) {
    int n = value.length;
    int[] clean = new int[n];
    int cleans = 0;
    for (int i = 0; i < n; i++) {
      if (!labelled[i]) {
        clean[cleans++] = i;
      }
    }
    boolean[] seen = new boolean[n];
    for (int i = 0, at = 0; i < n; i++) {
      if (!labelled[i]) {
        at++;
        continue;
      }
      double usual =
          median(value, clean, Math.max(0, at - HALF_DAY), Math.min(cleans, at + HALF_DAY));
      seen[i] =
          Double.isNaN(value[i]) || value[i] <= 1 || Math.abs(value[i] - usual) > 0.08 * usual;
    }
    for (int from = 0, to; from < n; from = to) {
      to = from + 1;
      if (labelled[from]) {
        int count = seen[from] ? 1 : 0;
        while (to < n && labelled[to]) {
          count += seen[to] ? 1 : 0;
          to++;
        }
        if (2 * count >= to - from) {
          Arrays.fill(seen, from, to, true);
        }
      }
    }
    return seen;
  }

  private static double median(double[] value, int[] clean, int from, int to) {
    double[] near = new double[to - from];
    int size = 0;
    for (int k = from; k < to; k++) {
      if (!Double.isNaN(value[clean[k]])) {
        near[size++] = value[clean[k]];
      }
    }
    Arrays.sort(near, 0, size);
    return size == 0
        ? Double.NaN
        : size % 2 == 1 ? near[size / 2] : (near[size / 2 - 1] + near[size / 2]) / 2;
  }

  private static StreamScore of(boolean[] flagged, boolean[] labelled, boolean[] seen) {
    int n = flagged.length;
    int[] counts = new int[4];
    int episodes = 0;
    int last = -n;
    for (int i = 0; i < n; i++) {
      boolean scored = !labelled[i] || seen[i];
      counts[0] += seen[i] ? 1 : 0;
      counts[1] += seen[i] && around(flagged, i) ? 1 : 0;
      counts[2] += flagged[i] && scored ? 1 : 0;
      counts[3] += flagged[i] && scored && around(seen, i) ? 1 : 0;
      if (flagged[i] && !around(labelled, i)) {
        episodes += i - last > ROWS_AN_HOUR ? 1 : 0;
        last = i;
      }
    }
    return new StreamScore(
        counts[0], counts[1], counts[2], counts[3], episodes, n / (double) ROWS_A_DAY);
  }

  static boolean around(boolean[] set, int i) {
    return set[i] || (i > 0 && set[i - 1]) || (i + 1 < set.length && set[i + 1]);
  }
}
