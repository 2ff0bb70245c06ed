package feedwitness.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Samples of one point that follow one another and share a {@link RunKey}: what a chunk holds. When
 * the clock is set back, the hour that comes again is another run; nothing merges.
 */
record Run(RunKey key, List<Kept> samples) {
  /** Bounds the memory and the octets of a chunk; an hour at 4 Hz stays whole. */
  static final int MAX_SAMPLES = 16_384;

  Run {
    samples = List.copyOf(samples);
  }

  private static boolean inOrder(List<Kept> samples) {
    for (int i = 1; i < samples.size(); i++) {
      if (samples.get(i - 1).sample().stamp().compareTo(samples.get(i).sample().stamp()) > 0) {
        return false;
      }
    }
    return true;
  }

  /** Sorts the samples of one point by (boot, sequence) and cuts where the key changes. */
  static List<Run> cut(int point, List<Kept> samples) {
    List<Kept> sorted = new ArrayList<>(samples);
    if (!inOrder(sorted)) {
      sorted.sort(Comparator.comparing(kept -> kept.sample().stamp()));
    }
    List<Run> runs = new ArrayList<>();
    int start = 0;
    while (start < sorted.size()) {
      RunKey key = RunKey.of(point, sorted.get(start).sample().stamp());
      int end = start + 1;
      while (end < sorted.size()
          && end - start < MAX_SAMPLES
          && key.fits(sorted.get(end).sample().stamp())) {
        end++;
      }
      runs.add(new Run(key, sorted.subList(start, end)));
      start = end;
    }
    return runs;
  }
}
