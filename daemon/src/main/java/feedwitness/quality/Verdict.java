package feedwitness.quality;

import feedwitness.quality.Judgement.Earlier;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Collects what the tests say of one reading and of those before it. */
final class Verdict {
  private final Recent numbers;
  private long now;
  private List<Earlier> earlier = List.of();

  /** Of each flag, the readings to add it to: bit 1 is the one before the latest. Mostly none. */
  private Map<QualityFlag, Long> back = Map.of();

  /**
   * @param numbers the last readings, at most 64, the one that is judged being the latest
   */
  Verdict(Recent numbers) {
    this.numbers = numbers;
  }

  void now(QualityFlag flag) {
    now |= flag.mask();
  }

  /** Of a reading too far back nothing is said. */
  void earlier(long sequence, QualityFlag flag) {
    int at = 0;
    while (at < numbers.size() && numbers.sequence(at) != sequence) {
      at++;
    }
    if (at == 0) {
      now(flag);
    } else if (at < numbers.size()) {
      back = back.isEmpty() ? new EnumMap<>(QualityFlag.class) : back;
      back.merge(flag, 1L << at, (some, more) -> some | more);
    }
  }

  void earlier(Recent readings, QualityFlag flag) {
    for (int i = readings.size() - 1; i >= 0; i--) {
      earlier(readings.sequence(i), flag);
    }
  }

  /** All readings from that one up to the latest but one, however far back. */
  void since(long first, QualityFlag flag) {
    if (numbers.size() > 1 && first <= numbers.sequence(1)) {
      add(new Earlier(first, numbers.sequence(1), Flags.of(flag)));
    }
  }

  private void add(Earlier one) {
    earlier = earlier.isEmpty() ? new ArrayList<>() : earlier;
    earlier.add(one);
  }

  /** What there is to say. */
  Judgement judgement() {
    back.forEach((flag, bits) -> addRuns(bits, Flags.of(flag)));
    return now == 0 && earlier.isEmpty()
        ? Judgement.NOTHING
        : new Judgement(new Flags(now), earlier);
  }

  /** Neighbours that get the same flag are named together, the oldest first. */
  private void addRuns(long bits, Flags flags) {
    for (int at = numbers.size() - 1; at > 0; at--) {
      if ((bits & 1L << at) != 0) {
        int first = at;
        while ((bits & 1L << (at - 1)) != 0) {
          at--;
        }
        add(new Earlier(numbers.sequence(first), numbers.sequence(at), flags));
      }
    }
  }
}
