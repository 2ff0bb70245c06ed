package feedwitness.feed;

import feedwitness.solution.ConductivityModel;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

  /** With the conductivity model as it is. */
  public Mixer() {
    this(new ConductivityModel());
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

  /**
   * What a form mixes, to be solved back from a measured strength; empty if it is at fault, mixes
   * nothing, or is beyond the model.
   */
  public Optional<FeedStock> feed(Map<String, ?> fields) {
    FormWork work = new FormWork(fields, foresight);
    return work.outcome() instanceof MixOutcome.Mixed ? work.feed() : Optional.empty();
  }

  /**
   * A nitrate feed of which only a measured dilution is known: what its salts are hardly matters
   * where that dilution and the feed are about as strong.
   *
   * @param water strength of the water, mS/cm at 25 °C
   * @param reads what the stock, let down with that water, read, mS/cm at 25 °C
   * @param dilution litres that one litre of stock was made up to
   * @throws IllegalArgumentException {@code reason; remedy} if it cannot have read so
   */
  public FeedStock measuredStock(double water, double reads, double dilution) {
    Optional<FeedStock> feed =
        feed(
            Map.of(
                "title", "stock by its measured dilution",
                "water", Map.of("measured", Text.plain(water)),
                "goal", Map.of("frequency", "every watering"),
                "use", List.of(Map.of("product", "potassium-nitrate", "rate", "1 g/L")),
                "make", Map.of("volume", "1 L")));
    return feed.orElseThrow(
            () ->
                new IllegalArgumentException(
                    "water of %s mS/cm cannot be solved; check source-strength"
                        .formatted(Text.plain(water))))
        .measured(reads, dilution);
  }
}
