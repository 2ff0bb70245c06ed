package feedwitness.check;

import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.util.Optional;

/**
 * Keeps readings of a probe out of its place's history after a check, until they look like the
 * place again, somebody says that it is back, or a time limit passes. Where the place reads like
 * the last standard, readings must have left that level first. Belongs to one thread.
 */
public final class BeakerReturn {
  /** So many in a row, over so many seconds. */
  private static final int ENOUGH = 5;

  private static final double SECONDS = 20;
  private static final double LIKE = 0.15;

  private final CheckStarted started;
  private final double lastStandard;
  private final Duration limit;
  private final When closed;

  private int alike;
  private double alikeSince;
  private boolean left;
  private double last = Double.NaN;
  private Optional<Mark> lastMark = Optional.empty();
  private Optional<Mark> firstAlike = Optional.empty();
  private boolean done;

  /**
   * Begins when the check is closed.
   *
   * @param lastStandard strength of the standard it was last in, mS/cm at 25 °C; NaN if in none
   */
  public BeakerReturn(CheckStarted started, double lastStandard, CheckLimits limits, When closed) {
    this.started = started;
    this.lastStandard = lastStandard;
    this.limit = limits.away();
    this.closed = closed;
  }

  /** Whether readings still belong to the beaker, not to the place. */
  public boolean inBeaker() {
    return !done;
  }

  /** A reading, mS/cm at 25 °C; the record when it is back. */
  public Optional<ProbeReturned> reading(Stamp stamp, double at25) {
    if (done) {
      return Optional.empty();
    }
    last = at25;
    lastMark = Optional.of(Mark.of(stamp));
    double seconds = stamp.monotonicNanos() / 1e9;
    left |= Double.isNaN(lastStandard) || !near(at25, lastStandard);
    if (!near(at25, started.before()) || !left) {
      alike = 0;
      return Optional.empty();
    }
    if (alike == 0) {
      alikeSince = seconds;
      firstAlike = lastMark;
    }
    alike++;
    if (alike < ENOUGH || seconds - alikeSince < SECONDS) {
      return Optional.empty();
    }
    return Optional.of(
        back(
            ProbeReturned.How.READINGS_LOOK_LIKE_BEFORE,
            CheckEvidence.BY_ITSELF,
            "reads %s again, %s before the check"
                .formatted(Say.conductivity(at25), Say.conductivity(started.before())),
            new When(stamp.monotonicNanos(), stamp.wall()),
            firstAlike));
  }

  private static boolean near(double a, double b) {
    return Math.abs(a / b - 1) <= LIKE;
  }

  /** Time passes; the record when the limit has. */
  public Optional<ProbeReturned> tick(When now) {
    if (done || now.since(closed).compareTo(limit) <= 0) {
      return Optional.empty();
    }
    String note =
        "%d minutes after the check %s reads %s, %s before the check; taken as back in its place, look whether it is"
            .formatted(
                limit.toMinutes(),
                started.subject(),
                Say.conductivity(last),
                Say.conductivity(started.before()));
    return Optional.of(
        back(ProbeReturned.How.TIME_LIMIT, CheckEvidence.BY_ITSELF, note, now, lastMark));
  }

  /** Somebody says that it is back. */
  public Optional<ProbeReturned> said(String author, When now) {
    return done
        ? Optional.empty()
        : Optional.of(back(ProbeReturned.How.SAID, author, "", now, lastMark));
  }

  private ProbeReturned back(
      ProbeReturned.How how, String author, String note, When now, Optional<Mark> to) {
    done = true;
    return new ProbeReturned(
        new Entry(started.entry().check(), started.subject(), now.wall(), author),
        how,
        started.mark(),
        to,
        note);
  }
}
