package feedwitness.quality;

import feedwitness.quality.Judgement.Qualification;
import java.util.ArrayList;
import java.util.List;

/** Collects what the tests say of one reading and of those before it. */
final class Verdict {
  private Flags now = Flags.NONE;
  private final List<Qualification> earlier = new ArrayList<>(0);

  void now(QualityFlag flag) {
    now = now.with(flag);
  }

  void earlier(long sequence, QualityFlag flag) {
    earlier.add(new Qualification(sequence, Flags.of(flag)));
  }

  void earlier(Recent readings, QualityFlag flag) {
    for (int back = readings.size() - 1; back >= 0; back--) {
      earlier(readings.sequence(back), flag);
    }
  }

  /** What there is to say; nothing of readings before that sequence. */
  Judgement notBefore(long first) {
    earlier.removeIf(one -> one.sequence() < first);
    return new Judgement(now, earlier);
  }
}
