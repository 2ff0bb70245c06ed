package feedwitness.watch.drift;

/**
 * Two-sided cumulative sum of standardised residuals (Page 1954): grows while they lie beyond the
 * allowance, signals above the limit. Remembers when each sum last left zero: the best guess of
 * when a change began.
 */
final class Cusum {
  private final double allowance;
  private double limit;
  private double up;
  private double down;
  private double upSince;
  private double downSince;

  Cusum(double allowance, double limit) {
    this.allowance = allowance;
    this.limit = limit;
  }

  double allowance() {
    return allowance;
  }

  void limit(double other) {
    limit = other;
  }

  /** Adds a residual met at {@code seconds}; +1 or −1 on a signal, else 0. */
  int add(double z, double seconds) {
    if (up == 0) {
      upSince = seconds;
    }
    if (down == 0) {
      downSince = seconds;
    }
    up = Math.max(0, up + z - allowance);
    down = Math.max(0, down - z - allowance);
    if (up > limit) {
      return 1;
    }
    return down > limit ? -1 : 0;
  }

  /** When the sum of that direction left zero. */
  double since(int direction) {
    return direction > 0 ? upSince : downSince;
  }

  /** The sums over the limit: 1 signals. */
  double share(int direction) {
    return (direction > 0 ? up : down) / limit;
  }

  void reset() {
    up = 0;
    down = 0;
  }

  void write(StateWriter out) {
    out.number(up).number(down).number(upSince).number(downSince);
  }

  void read(StateReader in) {
    up = in.number();
    down = in.number();
    upSince = in.number();
    downSince = in.number();
  }
}
