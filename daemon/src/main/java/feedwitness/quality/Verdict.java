package feedwitness.quality;

import feedwitness.quality.Judgement.Qualification;
import java.util.ArrayList;
import java.util.List;

/** Collects what the tests say of one reading and of those before it. */
final class Verdict {
  private long now;
  private List<Qualification> earlier = List.of();

  void now(QualityFlag flag) {
    now |= flag.mask();
  }

  void earlier(long sequence, QualityFlag flag) {
    if (earlier.isEmpty()) {
      earlier = new ArrayList<>();
    }
    earlier.add(new Qualification(sequence, Flags.of(flag)));
  }

  void earlier(Recent readings, QualityFlag flag) {
    for (int back = readings.size() - 1; back >= 0; back--) {
      earlier(readings.sequence(back), flag);
    }
  }

  /** What there is to say; nothing of readings before that sequence. */
  Judgement notBefore(long first) {
    if (now == 0 && earlier.isEmpty()) {
      return Judgement.NOTHING;
    }
    if (!earlier.isEmpty()) {
      earlier.removeIf(one -> one.sequence() < first);
    }
    return new Judgement(new Flags(now), earlier);
  }
}
