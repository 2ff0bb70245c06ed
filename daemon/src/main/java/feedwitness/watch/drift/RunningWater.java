package feedwitness.watch.drift;

import java.util.Optional;

/**
 * Water that never rests: minutes for what is sudden, hours for what is slow. A minute's value is
 * the mean of its readings; rarer readings are minutes of their own.
 */
final class RunningWater {
  private static final double MINUTE = 60;
  private static final double SLACK = 0.5;
  private static final double LONGEST = 3600;
  private static final double HOUR = 3600;

  /** A reading rarer than each minute stands for the time to the next; rarer still, for itself. */
  private static final int MOST_MINUTES = 5;

  private final SuddenShift sudden;
  private final Gatherer hour = new Gatherer();
  private double minuteStart = Double.NaN;
  private double hourStart = Double.NaN;
  private long hourWall;
  private double sum;
  private int count;
  private double last = Double.NaN;
  private double spacing = MINUTE;
  private double said = Double.NEGATIVE_INFINITY;

  RunningWater(double noticeShare) {
    sudden = new SuddenShift(noticeShare);
  }

  SuddenShift sudden() {
    return sudden;
  }

  /** Takes a reading; what the minute that ended with it brought. */
  SuddenShift.Said take(
      double seconds, long wallMillis, double log, double uncertainty, double celsius) {
    if (Double.isNaN(hourStart)) {
      hourStart = seconds;
      hourWall = wallMillis;
    }
    hour.add(log, uncertainty, celsius);
    if (seconds - minuteStart < MINUTE - SLACK) {
      sum += log;
      count++;
      last = seconds;
      return SuddenShift.Said.NOTHING;
    }
    SuddenShift.Said brought = count > 0 ? close() : SuddenShift.Said.NOTHING;
    if (seconds - minuteStart < LONGEST) {
      spacing += 0.1 * (Math.min(seconds - minuteStart, 2 * spacing) - spacing);
    }
    boolean rare = seconds - last >= MINUTE - SLACK;
    minuteStart = seconds;
    last = seconds;
    sum = log;
    count = 1;
    return rare && brought == SuddenShift.Said.NOTHING ? close() : brought;
  }

  private SuddenShift.Said close() {
    long minutes = Math.round(spacing / MINUTE);
    int stands = minutes > MOST_MINUTES ? 1 : (int) Math.max(1, minutes);
    SuddenShift.Said brought = sudden.take(minuteStart, sum / count, stands);
    if (brought == SuddenShift.Said.BEGAN) {
      said = minuteStart;
    }
    count = 0;
    return brought;
  }

  /** The hour, once it is over. */
  Optional<LineEvent> hour(double seconds) {
    if (Double.isNaN(hourStart) || seconds - hourStart < HOUR || hour.readings() == 0) {
      return Optional.empty();
    }
    LineEvent event =
        new LineEvent(
            hourStart,
            hourWall,
            Math.exp(hour.middle()),
            hour.uncertainty(),
            hour.celsius(),
            hour.readings(),
            0);
    hour.clear();
    hourStart = Double.NaN;
    return Optional.of(event);
  }

  /** Whether a sudden change is there, or was said within so many seconds. */
  boolean saidWithin(double seconds, double now) {
    return sudden.active() || now - said < seconds;
  }

  void clear() {
    sudden.clear();
    hour.clear();
    minuteStart = Double.NaN;
    hourStart = Double.NaN;
    count = 0;
  }

  /** Readings stopped: the minute and the hour begun are let go. */
  void pause() {
    hour.clear();
    minuteStart = Double.NaN;
    hourStart = Double.NaN;
    count = 0;
  }

  void write(StateWriter out) {
    sudden.write(out);
    hour.write(out);
    out.number(minuteStart).number(hourStart).whole(hourWall).number(sum).whole(count);
    out.number(said).number(last).number(spacing);
  }

  void read(StateReader in) {
    sudden.read(in);
    hour.read(in);
    minuteStart = in.number();
    hourStart = in.number();
    hourWall = in.whole();
    sum = in.number();
    count = in.count(Integer.MAX_VALUE);
    said = in.number();
    last = in.number();
    spacing = in.number();
  }
}
