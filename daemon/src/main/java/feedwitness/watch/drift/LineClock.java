package feedwitness.watch.drift;

/**
 * One axis of seconds that never goes back, from the clocks of a stamp. Within a start of the
 * service the monotonic clock counts and a wall clock that jumps moves nothing; between two starts
 * the wall clock is all there is.
 */
final class LineClock {
  private static final double JUMP = 60;
  private static final double RESTARTED = 60;

  private double seconds;
  private int boot;
  private long nanos;
  private long wall;
  private boolean begun;
  private double jumped;

  /** The axis at a reading; earlier than the one before counts as at the same time. */
  double at(int newBoot, long monotonicNanos, long wallMillis) {
    jumped = 0;
    if (begun) {
      double byWall = (wallMillis - wall) / 1e3;
      boolean same = newBoot == boot;
      double passed = same ? (monotonicNanos - nanos) / 1e9 : byWall > 0 ? byWall : RESTARTED;
      jumped = same && Math.abs(byWall - passed) > JUMP ? byWall - passed : 0;
      jumped = passed < -JUMP ? passed : jumped;
      seconds += Math.max(0, passed);
    }
    begun = true;
    boot = newBoot;
    nanos = monotonicNanos;
    wall = wallMillis;
    return seconds;
  }

  /** By how much the clock jumped at the last reading, s; 0 if it went evenly. */
  double jumped() {
    return jumped;
  }

  double seconds() {
    return seconds;
  }

  /** The wall clock's time of a moment on the axis, as the clock is set now; ms since 1970. */
  long wallMillis(double moment) {
    return wall - Math.round((seconds - moment) * 1e3);
  }

  void write(StateWriter out) {
    out.number(seconds).whole(boot).whole(nanos).whole(wall).truth(begun);
  }

  void read(StateReader in) {
    seconds = in.number();
    boot = in.count(Integer.MAX_VALUE);
    nanos = in.whole();
    wall = in.whole();
    begun = in.truth();
  }
}
