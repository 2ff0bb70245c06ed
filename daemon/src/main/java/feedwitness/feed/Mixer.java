package feedwitness.feed;

import feedwitness.solution.ConductivityModel;
import java.util.List;
import java.util.Map;

/** The feed sums behind one door: a form in, a mixing sheet or all its faults out. */
public final class Mixer {
  /** What a form may hold. */
  public static final List<String> SECTIONS =
      List.of(
          "title",
          "units",
          "water",
          "acid",
          "goal",
          "use",
          "make",
          "meter",
          "stock",
          "product",
          "supplement",
          "fallback",
          "check");

  private final Foresight foresight;

  public Mixer(ConductivityModel model) {
    foresight = new Foresight(model);
  }

  /** Every fertilizer a recipe may name without describing it. */
  public List<Product> fertilizers() {
    return new Products().all();
  }

  /**
   * Works out a form, as {@code daemon/docs/feed.md} describes its fields. A form without water,
   * goal, products and volume, but with a supplement, a fallback or a check, asks for these alone.
   *
   * @param fields texts, numbers, truths, lists and maps of these
   */
  public MixOutcome mix(Map<String, ?> fields) {
    return new FormWork(fields, foresight).outcome();
  }
}
