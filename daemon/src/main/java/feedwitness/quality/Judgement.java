package feedwitness.quality;

import java.util.List;

/**
 * What a reading gives reason to say.
 *
 * @param now flags of the reading itself, besides those already known
 * @param earlier flags to add to readings before it, at most {@link QualityJudge#REACH} back
 */
public record Judgement(Flags now, List<Qualification> earlier) {

  /** Judged, and nothing to say. */
  public static final Judgement NOTHING = new Judgement(Flags.NONE, List.of());

  public Judgement {
    earlier = List.copyOf(earlier);
  }

  /** Flags to add to the reading of that sequence. */
  public record Qualification(long sequence, Flags flags) {}
}
