package feedwitness.site;

/** What brings stock into the water of a feed line. */
public sealed interface Mixer {

  /** For people: {@code injector 1 L of stock to 80 L of feed}. */
  String words();

  /**
   * A proportional injector.
   *
   * @param litresOfFeed made from one litre of stock, above 1
   */
  record Injector(double litresOfFeed) implements Mixer {
    /**
     * @throws IllegalArgumentException if the ratio makes no feed
     */
    public Injector {
      if (!(litresOfFeed > 1 && Double.isFinite(litresOfFeed))) {
        throw new IllegalArgumentException(
            ("one litre of stock makes %s litres of feed, which must be more than 1;"
                    + " write the litres of feed from one litre of stock, for example 80")
                .formatted(litresOfFeed));
      }
    }

    @Override
    public String words() {
      return "injector, 1 L of stock to %s L of feed".formatted(litresOfFeed);
    }
  }

  /**
   * A siphon mixer at a hose end.
   *
   * @param dial its setting; no unit, above 0
   */
  record Siphon(double dial) implements Mixer {
    /**
     * @throws IllegalArgumentException if the dial is not above 0
     */
    public Siphon {
      if (!(dial > 0 && Double.isFinite(dial))) {
        throw new IllegalArgumentException(
            "dial %s is not above 0; write the number the mixer is set to".formatted(dial));
      }
    }

    @Override
    public String words() {
      return "siphon mixer, dial at %s".formatted(dial);
    }
  }

  /** The tank already holds the feed: nothing is mixed on the way. */
  record None() implements Mixer {
    @Override
    public String words() {
      return "ready-mixed feed";
    }
  }
}
