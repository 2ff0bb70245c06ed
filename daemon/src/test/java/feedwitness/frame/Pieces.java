package feedwitness.frame;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.quantity.Octets;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Cuts octets into pieces and joins them again. */
final class Pieces {
  private Pieces() {}

  /** Everything a framer says of these octets fed as one, and when it is then given up. */
  static List<FrameOutcome> whole(Framer framer, Octets octets) {
    List<FrameOutcome> outcomes = new ArrayList<>(framer.feed(octets));
    outcomes.addAll(framer.giveUp());
    return outcomes;
  }

  /** The same, cut before the octets at these places (ascending). */
  static List<FrameOutcome> cut(Framer framer, Octets octets, int... places) {
    List<FrameOutcome> outcomes = new ArrayList<>();
    int from = 0;
    for (int place : places) {
      outcomes.addAll(framer.feed(octets.slice(from, place)));
      from = place;
    }
    outcomes.addAll(framer.feed(octets.slice(from, octets.length())));
    outcomes.addAll(framer.giveUp());
    return outcomes;
  }

  /** The same in random pieces of 1 to 40 octets. */
  static List<FrameOutcome> random(Framer framer, Octets octets, long seed) {
    Random random = new Random(seed);
    List<FrameOutcome> outcomes = new ArrayList<>();
    int from = 0;
    while (from < octets.length()) {
      int to = Math.min(octets.length(), from + 1 + random.nextInt(40));
      outcomes.addAll(framer.feed(octets.slice(from, to)));
      from = to;
    }
    outcomes.addAll(framer.giveUp());
    return outcomes;
  }

  static List<Octets> frames(List<FrameOutcome> outcomes) {
    return outcomes.stream().filter(o -> o instanceof Frame).map(FrameOutcome::octets).toList();
  }

  static Octets accounted(List<FrameOutcome> outcomes) {
    return join(outcomes.stream().map(FrameOutcome::octets).toList());
  }

  static Octets join(List<Octets> parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    parts.forEach(part -> all.writeBytes(part.toArray()));
    return Octets.of(all.toByteArray());
  }
}
