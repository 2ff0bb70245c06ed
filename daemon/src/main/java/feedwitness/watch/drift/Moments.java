package feedwitness.watch.drift;

/** Sums over pairs of successive values, about their own means; old ones fade. */
final class Moments {
  private double weight;
  private double x;
  private double y;
  private double xx;
  private double xy;
  private double yy;

  void add(double earlier, double later, double keep) {
    weight = weight * keep + 1;
    x = x * keep + earlier;
    y = y * keep + later;
    xx = xx * keep + earlier * earlier;
    xy = xy * keep + earlier * later;
    yy = yy * keep + later * later;
  }

  double weight() {
    return weight;
  }

  double earlierSquares() {
    return weight > 0 ? Math.max(0, xx - x * x / weight) : 0;
  }

  double products() {
    return weight > 0 ? xy - x * y / weight : 0;
  }

  double laterSquares() {
    return weight > 0 ? Math.max(0, yy - y * y / weight) : 0;
  }

  void write(StateWriter out) {
    out.number(weight).number(x).number(y).number(xx).number(xy).number(yy);
  }

  void read(StateReader in) {
    weight = in.number();
    x = in.number();
    y = in.number();
    xx = in.number();
    xy = in.number();
    yy = in.number();
  }
}
