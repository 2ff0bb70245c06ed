package feedwitness.quality;

import java.util.List;

/**
 * What a reading gives reason to say.
 *
 * @param now flags of the reading itself, besides those already known
 * @param earlier flags to add to readings before it
 */
public record Judgement(Flags now, List<Earlier> earlier) {

  /** Judged, and nothing to say. */
  public static final Judgement NOTHING = new Judgement(Flags.NONE, List.of());

  public Judgement {
    earlier = List.copyOf(earlier);
  }

  /**
   * Flags to add to readings judged before, {@link Flags#withLater} as far as they apply. At most
   * {@link QualityJudge#REACH} back, but for {@link QualityFlag#STUCK} and {@link
   * QualityFlag#TEMPERATURE_STUCK}, which reach to where the number was given first.
   *
   * @param first sequence of the first of them
   * @param last sequence of the last, at least {@code first}
   */
  public record Earlier(long first, long last, Flags flags) {}
}
