package feedwitness.watch.drift;

import feedwitness.feed.FeedStock;
import feedwitness.site.FeedLine;

/** From the conductivity of line and source to what the mixer delivered, and back. */
public sealed interface DeliveredShare {

  /**
   * What was delivered, in a unit of its own that is proportional to stock per litre; 0 or less, or
   * NaN, if the line carries no feed.
   *
   * @param line mS/cm at 25 °C
   * @param source mS/cm at 25 °C; 0 if not known
   */
  double of(double line, double source);

  /** The line's conductivity for a share, mS/cm at 25 °C. */
  double line(double share, double source);

  /** Solved where the feed line's stock is known. */
  static DeliveredShare of(FeedLine line) {
    return line.stock().<DeliveredShare>map(Solved::new).orElseGet(Added::new);
  }

  /**
   * Proportional to the conductivity that feed added: needs no recipe, reads a sag of 10 % half a
   * percent too small.
   */
  record Added() implements DeliveredShare {
    @Override
    public double of(double line, double source) {
      return line - source;
    }

    @Override
    public double line(double share, double source) {
      return source + share;
    }
  }

  /**
   * Solved with the conductivity model for a known feed in a known water: 1 is the feed of the
   * recipe. What the source differs from that water is taken off first.
   */
  record Solved(FeedStock stock) implements DeliveredShare {
    @Override
    public double of(double line, double source) {
      return stock.share(source > 0 ? line - source + stock.water() : line);
    }

    @Override
    public double line(double share, double source) {
      double strength = stock.strength(share);
      return source > 0 ? strength - stock.water() + source : strength;
    }
  }
}
