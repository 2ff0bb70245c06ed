package feedwitness.watch.drift;

/**
 * Two cumulative sums side by side: allowance 0.25 for small lasting shifts, 1 for large ones.
 * Within 1.3 of the shortest possible delay from half a standard deviation to three. Residuals are
 * clipped, so that no single one can signal: with outliers about, an unclipped sum cries often.
 */
final class CusumPair {
  static final double SMALL = 0.25;
  static final double LARGE = 1;

  /** Where residuals are clipped (Huber's way; a weight that comes back to zero would be blind). */
  static final double CLIP = 2.5;

  /** Of the false signals, the share that each sum may have: neither is preferred. */
  static final double EVEN = 0.5;

  private final double clip;
  private final double smallShare;
  private final Cusum small;
  private final Cusum large;

  /**
   * @param clip in standard deviations; may be infinite
   * @param runLength residuals between two false signals, on average; at least 20
   * @param smallShare share of the false signals that the sum for small shifts may have, 0 to 1
   */
  CusumPair(double clip, double runLength, double smallShare) {
    this.clip = clip;
    this.smallShare = smallShare;
    small = new Cusum(SMALL, RunLength.limitFor(SMALL, clip, 2 * runLength / smallShare));
    large = new Cusum(LARGE, RunLength.limitFor(LARGE, clip, 2 * runLength / (1 - smallShare)));
  }

  /** Takes another false-alarm rate; sums stay as they are. */
  void runLength(double runLength) {
    small.limit(RunLength.limitFor(SMALL, clip, 2 * runLength / smallShare));
    large.limit(RunLength.limitFor(LARGE, clip, 2 * runLength / (1 - smallShare)));
  }

  /** Adds a residual in standard deviations; +1 or −1 on a signal, else 0. */
  int add(double z, double seconds) {
    double clipped = Math.max(-clip, Math.min(clip, z));
    int slow = small.add(clipped, seconds);
    int quick = large.add(clipped, seconds);
    return quick != 0 ? quick : slow;
  }

  /** When what signals in that direction began: the last zero of the sum that is fullest. */
  double since(int direction) {
    return small.share(direction) >= 1 ? small.since(direction) : large.since(direction);
  }

  /** How near a signal is, 0 to 1; above 1 at a signal. */
  double nearness() {
    return Math.max(
        Math.max(small.share(1), small.share(-1)), Math.max(large.share(1), large.share(-1)));
  }

  void reset() {
    small.reset();
    large.reset();
  }

  void write(StateWriter out) {
    small.write(out);
    large.write(out);
  }

  void read(StateReader in) {
    small.read(in);
    large.read(in);
  }
}
