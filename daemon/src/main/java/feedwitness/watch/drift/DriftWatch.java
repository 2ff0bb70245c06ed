package feedwitness.watch.drift;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import feedwitness.watch.diagnosis.Evidence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Watches one feed line: takes the measurements of its points in order and gives findings. No clock
 * of its own: the same measurements always give the same findings, live or in replay. Pauses freeze
 * it; a restart goes on from {@link #state()}. For one thread.
 */
public final class DriftWatch {
  private static final double AIR = 0.02;
  private static final double AIR_SHARE = 0.08;
  private static final double LEAST_PAUSE = 600;
  private static final double PAUSE_INTERVALS = 10;
  private static final double DAY_AND_A_BIT = 26 * 3600.0;
  private static final int PROOFS = 3;
  private static final double SAID_LATELY = 6 * 3600.0;

  private final FeedLine line;
  private final Optional<PointName> second;
  private final LineClock clock = new LineClock();
  private final EventFinder finder = new EventFinder();
  private final RunningWater running;
  private final LineJudge judge;
  private final double[] proofs = new double[PROOFS];
  private boolean rests;
  private double last = Double.NaN;
  private double interval = 1;
  private double usual = Double.NaN;
  private final List<DriftFinding> found = new ArrayList<>();

  /** A watch that knows nothing yet but what the feed line says of its strengths and stock. */
  public DriftWatch(FeedLine line) {
    this.line = line;
    this.second = line.secondProbe();
    this.running = new RunningWater(line.limits().noticePercent() / 100);
    this.judge = new LineJudge(line, DeliveredShare.of(line), clock, found);
    this.rests = !(line.mixer() instanceof Mixer.None);
    java.util.Arrays.fill(proofs, Double.NEGATIVE_INFINITY);
  }

  /**
   * Goes on where another left off.
   *
   * @param state of a watch of the same feed line
   * @throws IllegalArgumentException if the state is damaged or of another version; a new watch
   *     then learns anew
   */
  public static DriftWatch resume(FeedLine line, Octets state) {
    DriftWatch watch = new DriftWatch(line);
    StateReader in = new StateReader(state);
    watch.clock.read(in);
    watch.finder.read(in);
    watch.running.read(in);
    watch.judge.read(in);
    for (int i = 0; i < PROOFS; i++) {
      watch.proofs[i] = in.number();
    }
    watch.rests = in.truth();
    watch.last = in.number();
    watch.interval = in.number();
    watch.usual = in.number();
    in.end();
    return watch;
  }

  /** All that has to be remembered, a few thousand octets whatever went before. */
  public Octets state() {
    StateWriter out = new StateWriter();
    clock.write(out);
    finder.write(out);
    running.write(out);
    judge.write(out);
    for (double proof : proofs) {
      out.number(proof);
    }
    out.truth(rests).number(last).number(interval).number(usual);
    return out.octets();
  }

  /** The feed line. */
  public FeedLine feedLine() {
    return line;
  }

  /** How it stands. */
  public DriftStanding standing() {
    return judge.standing();
  }

  /** Takes a measurement; those of points that are none of the line's are left alone. */
  public List<DriftFinding> take(Measurement measurement) {
    PointName point = measurement.point();
    boolean isLine = point.equals(line.line());
    boolean isSource = line.source().isPresent() && point.equals(line.source().get());
    double value = measurement.conductivity25MilliSiemensPerCm();
    boolean isContact = line.contact().orElse(line.line()).equals(point);
    if (isContact && measurement.waterFlows().isPresent()) {
      contact(measurement.stamp(), measurement.waterFlows().get());
    }
    boolean isSecond = second.filter(point::equals).isPresent();
    if (!(isLine || isSource || isSecond) || !(value >= 0) || !measurement.isOfItsPlace()) {
      return told();
    }
    Stamp stamp = measurement.stamp();
    if (isSecond) {
      judge.second(clock.at(stamp.boot(), stamp.monotonicNanos(), stamp.wallMillis()), value);
      tellJump();
    }
    if (!(isLine || isSource)) {
      return told();
    }
    double u = measurement.standardUncertaintyMilliSiemensPerCm();
    double celsius = measurement.temperatureCelsius();
    return isLine
        ? line(stamp.boot(), stamp.monotonicNanos(), stamp.wallMillis(), value, u, celsius)
        : source(stamp.boot(), stamp.monotonicNanos(), stamp.wallMillis(), value, u, celsius);
  }

  /**
   * Takes a reading of the source water.
   *
   * @param boot as in {@link Stamp}
   * @param monotonicNanos as in {@link Stamp}
   * @param wallMillis as in {@link Stamp}
   * @param conductivity25 mS/cm at 25 °C
   * @param uncertainty standard uncertainty, mS/cm; NaN if unknown
   * @param celsius °C; NaN if unknown
   */
  public List<DriftFinding> source(
      int boot,
      long monotonicNanos,
      long wallMillis,
      double conductivity25,
      double uncertainty,
      double celsius) {
    double now = clock.at(boot, monotonicNanos, wallMillis);
    tellJump();
    if (conductivity25 > AIR / 2) {
      judge.source(now, conductivity25, uncertainty, celsius);
    }
    return told();
  }

  /** Takes a reading of the line; parameters as for the source. */
  public List<DriftFinding> line(
      int boot,
      long monotonicNanos,
      long wallMillis,
      double conductivity25,
      double uncertainty,
      double celsius) {
    double now = clock.at(boot, monotonicNanos, wallMillis);
    tellJump();
    if (dead(conductivity25, celsius)) {
      return told();
    }
    pauses(now);
    if (conductivity25 < AIR || conductivity25 < AIR_SHARE * usual) {
      finder.air();
      return told();
    }
    usual = Double.isNaN(usual) ? conductivity25 : usual + 1e-4 * (conductivity25 - usual);
    double log = Math.log(conductivity25);
    finder.take(now, wallMillis, log, uncertainty, celsius).ifPresent(this::event);
    if (!rests) {
      flows(now, wallMillis, log, uncertainty, celsius);
    }
    return told();
  }

  private void contact(Stamp stamp, boolean flows) {
    double now = clock.at(stamp.boot(), stamp.monotonicNanos(), stamp.wallMillis());
    tellJump();
    finder.contact(now, stamp.wallMillis(), flows).ifPresent(this::event);
  }

  /** Both zero: a dead bus, no reading. */
  private static boolean dead(double conductivity25, double celsius) {
    return !(conductivity25 > 0) && !(Math.abs(celsius) > 0);
  }

  private void pauses(double now) {
    double passed = now - last;
    if (passed > Math.max(LEAST_PAUSE, PAUSE_INTERVALS * interval)) {
      finder.pause().ifPresent(this::event);
      running.pause();
    }
    if (!Double.isNaN(passed)) {
      // a table of a reading each quarter of an hour has no pauses, once that is known
      interval += 0.1 * (Math.min(passed, 3 * interval) - interval);
    }
    last = now;
  }

  private void event(LineEvent event) {
    if (finder.warm()) {
      System.arraycopy(proofs, 1, proofs, 0, PROOFS - 1);
      proofs[PROOFS - 1] = event.seconds();
      if (!rests && event.seconds() - proofs[0] < DAY_AND_A_BIT) {
        rests = true;
        running.clear();
        judge.anew();
      }
    }
    if (rests) {
      judge.event(event);
    }
  }

  private void flows(double now, long wallMillis, double log, double uncertainty, double celsius) {
    SuddenShift.Said said = running.take(now, wallMillis, log, uncertainty, celsius);
    if (said == SuddenShift.Said.BEGAN) {
      SuddenShift sudden = running.sudden();
      judge.sudden(sudden.begun(), sudden.size(), Math.exp(log));
    } else if (said == SuddenShift.Said.ENDED) {
      judge.suddenOver();
    }
    running.hour(now).ifPresent(hour -> judge.hour(hour, running.saidWithin(SAID_LATELY, now)));
  }

  private void tellJump() {
    if (clock.jumped() != 0) {
      judge.clockJumped(clock.jumped());
      finder.discard();
    }
  }

  /**
   * Something was done to the line on purpose.
   *
   * @param stamp when
   */
  public List<DriftFinding> note(LineChange change, Stamp stamp) {
    clock.at(stamp.boot(), stamp.monotonicNanos(), stamp.wallMillis());
    boolean during = finder.busy();
    finder.discard();
    judge.changed(change, during);
    if (change.rebaselines()) {
      running.clear();
    }
    return told();
  }

  /** The line's probe was checked in a standard solution. */
  public List<DriftFinding> checked(Evidence.Check made, Stamp stamp) {
    clock.at(stamp.boot(), stamp.monotonicNanos(), stamp.wallMillis());
    judge.checked(made);
    return told();
  }

  /** Whether somebody said, or a schedule says, that plain water runs: then it is no news. */
  public void plainAnnounced(boolean announced) {
    judge.plainAnnounced(announced);
  }

  /** A strength that people named since the start, mS/cm at 25 °C, source water included. */
  public void named(double strength) {
    judge.named(strength);
  }

  private List<DriftFinding> told() {
    if (found.isEmpty()) {
      return List.of();
    }
    List<DriftFinding> all = List.copyOf(found);
    found.clear();
    return all;
  }
}
