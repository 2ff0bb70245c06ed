package feedwitness.check;

import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import feedwitness.quantity.Stamp;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Notices that a probe was lifted out and put into something else without a word: it goes through
 * air and then comes to rest at another level. Sure if that level is a standard on the shelf or the
 * temperature jumped as well, else likely. A step without air is no sign: feeds change in place.
 * Belongs to one thread.
 */
public final class PlaceWatch {
  private static final double AIR = 0.1;
  private static final double SAME = 0.1;
  private static final double STANDARD = 0.05;
  private static final double REST = 0.03;
  private static final double KELVIN = 1;
  private static final int ENOUGH = 10;
  private static final int BACK = 5;
  private static final int REMEMBERED = 30;
  private static final double LIMIT_SECONDS = 2 * 3600;

  /**
   * A drop held in the cell reads part-way for minutes: what came so shortly before is no level.
   */
  private static final double HELD_SECONDS = 180;

  private final CheckSubject subject;
  private final StandardShelf shelf;
  private final boolean airIsNormal;
  private final List<Seen> inPlace = new ArrayList<>();
  private final ArrayDeque<Seen> lately = new ArrayDeque<>();
  private final List<Seen> elsewhere = new ArrayList<>();

  private boolean air;
  private Optional<Away> away = Optional.empty();
  private int back;

  private record Seen(Mark mark, double seconds, double at25, double celsius) {}

  private record Away(Mark from, double since, boolean sure, String note) {}

  /**
   * For one probe.
   *
   * @param airIsNormal whether it often lies dry, as in a line between waterings; then only a
   *     standard of the shelf together with a jump of temperature is a sign
   */
  public PlaceWatch(CheckSubject subject, StandardShelf shelf, boolean airIsNormal) {
    this.subject = subject;
    this.shelf = shelf;
    this.airIsNormal = airIsNormal;
  }

  /** What gave it away, while it is away. */
  public Optional<String> away() {
    return away.map(Away::note);
  }

  /** A reading, mS/cm at 25 °C, °C; the record when it is back. */
  public Optional<ProbeOutOfPlace> reading(Stamp stamp, double at25, double celsius) {
    Seen seen = new Seen(Mark.of(stamp), stamp.monotonicNanos() / 1e9, at25, celsius);
    if (Double.isNaN(at25)) {
      return Optional.empty();
    }
    if (away.isPresent()) {
      return awayReading(seen, away.get());
    }
    if (inPlace.size() >= ENOUGH && at25 < AIR * level()) {
      air = true;
      elsewhere.clear();
      forgetTheDrop();
      return Optional.empty();
    }
    if (!air) {
      remember(seen);
      return Optional.empty();
    }
    elsewhere.add(seen);
    if (elsewhere.size() > ENOUGH) {
      elsewhere.remove(0);
    }
    if (elsewhere.size() == ENOUGH && atRest()) {
      decide();
    }
    return Optional.empty();
  }

  private void remember(Seen seen) {
    lately.add(seen);
    while (seen.seconds() - lately.getFirst().seconds() > HELD_SECONDS) {
      inPlace.add(lately.removeFirst());
      if (inPlace.size() > REMEMBERED) {
        inPlace.remove(0);
      }
    }
  }

  /** What it read part-way must not count for the level later, once it is back in its place. */
  private void forgetTheDrop() {
    double level = level();
    lately.removeIf(seen -> Math.abs(seen.at25() / level - 1) > SAME);
  }

  /** The last reading before it was lifted. */
  private Seen lastInPlace() {
    return lately.isEmpty() ? inPlace.get(inPlace.size() - 1) : lately.getLast();
  }

  private double level() {
    return median(inPlace, true);
  }

  private static double median(List<Seen> some, boolean conductivity) {
    double[] sorted =
        some.stream().mapToDouble(s -> conductivity ? s.at25() : s.celsius()).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  /** A probe on its way from air to another level passes the one it came from. */
  private boolean atRest() {
    double earlier = median(elsewhere.subList(0, ENOUGH / 2), true);
    double later = median(elsewhere.subList(ENOUGH / 2, ENOUGH), true);
    return Math.abs(later / earlier - 1) <= REST;
  }

  private void decide() {
    double now = median(elsewhere, true);
    double jumped = Math.abs(median(elsewhere, false) - median(inPlace, false));
    Optional<StandardSolution> standard =
        shelf.standards().stream()
            .filter(one -> Math.abs(now / one.nominal() - 1) <= STANDARD)
            .min(Comparator.comparingDouble(one -> Math.abs(now / one.nominal() - 1)));
    boolean warmer = jumped >= KELVIN;
    boolean sign = airIsNormal ? standard.isPresent() && warmer : true;
    if (Math.abs(now / level() - 1) <= SAME || !sign) {
      air = false;
      elsewhere.forEach(this::remember);
      elsewhere.clear();
      return;
    }
    String what =
        standard
            .map(one -> "like " + one.title())
            .orElseGet(() -> "instead of %s".formatted(Say.conductivity(level())));
    String note =
        "%s went through air and now reads %s, %s%s; if it hangs in a bucket, put it back"
            .formatted(
                subject,
                Say.conductivity(now),
                what,
                warmer ? ", and %s K away".formatted(Say.fixed(jumped, 1)) : "");
    Seen last = lastInPlace();
    lately.clear();
    away = Optional.of(new Away(last.mark(), last.seconds(), standard.isPresent() || warmer, note));
    back = 0;
  }

  private Optional<ProbeOutOfPlace> awayReading(Seen seen, Away gone) {
    boolean like = Math.abs(seen.at25() / level() - 1) <= SAME;
    back = like ? back + 1 : 0;
    boolean tooLong = seen.seconds() - gone.since() > LIMIT_SECONDS;
    if (back < BACK && !tooLong) {
      return Optional.empty();
    }
    String note =
        back >= BACK
            ? gone.note()
            : gone.note() + "; after two hours what it reads is taken as its place";
    if (tooLong && back < BACK) {
      inPlace.clear();
      lately.clear();
    }
    away = Optional.empty();
    air = false;
    elsewhere.clear();
    remember(seen);
    return Optional.of(
        new ProbeOutOfPlace(
            new Entry("", subject, seen.mark().at(), CheckEvidence.BY_ITSELF),
            gone.from(),
            seen.mark(),
            gone.sure(),
            note));
  }
}
