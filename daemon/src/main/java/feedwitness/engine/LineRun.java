package feedwitness.engine;

import feedwitness.alarm.Condition;
import feedwitness.alarm.LineKinds;
import feedwitness.feed.FeedStock;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import feedwitness.site.FeedLine;
import feedwitness.site.Site;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.DriftStanding;
import feedwitness.watch.drift.DriftStanding.Phase;
import feedwitness.watch.drift.DriftWatch;
import feedwitness.watch.drift.LineChange;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;

/** One feed line: its watch and what stands. Not for several threads. */
final class LineRun {
  /** Of the text that is kept; the watch's own state has a version too. */
  private static final String VERSION = "feed-line 2";

  private static final int LINES = 5;

  /** What was told before a restart is let go after so many events as usual. */
  private static final int USUAL_AGAIN = 3;

  private final ZoneId zone;
  private final DriftWatch watch;
  private final LineDeeds deeds;
  private long seen;
  private Optional<LineTold> told = Optional.empty();
  private boolean recalled;
  private Instant recalledAt = Instant.EPOCH;

  /**
   * A line about which nothing is known yet.
   *
   * @param seen the last record that was made before
   */
  LineRun(FeedLine line, Site site, EvidenceHistory history, long seen) {
    this(new DriftWatch(line), site, history, seen);
  }

  private LineRun(DriftWatch watch, Site site, EvidenceHistory history, long seen) {
    this.watch = watch;
    this.zone = site.zone();
    this.seen = seen;
    this.deeds = new LineDeeds(watch.feedLine(), site, history);
    deeds.begin(watch, seen);
  }

  /**
   * Goes on where another left off.
   *
   * @throws IllegalArgumentException in words for people if the text is damaged, of another
   *     version, or of a feed line that was configured otherwise
   */
  static LineRun resume(FeedLine line, Site site, EvidenceHistory history, String text) {
    String[] lines = text.split("\n", -1);
    if (lines.length != LINES || !lines[0].equals(VERSION)) {
      throw new IllegalArgumentException("what was kept is damaged or of another version");
    }
    if (!lines[1].equals(fingerprint(line))) {
      throw new IllegalArgumentException(
          "points, mixer, recipe or strengths are configured otherwise than before");
    }
    Octets state = Octets.of(Base64.getDecoder().decode(lines[2]));
    LineRun run =
        new LineRun(DriftWatch.resume(line, state), site, history, Long.parseLong(lines[4]));
    if (!lines[3].isEmpty()) {
      run.told = Optional.of(LineTold.parse(lines[3]));
      run.recalled = true;
      run.recalledAt = newest(run.watch.standing());
    }
    return run;
  }

  /** To be kept: version, what it was configured as, the watch's state, what stands. */
  String text() {
    return String.join(
        "\n",
        VERSION,
        fingerprint(line()),
        Base64.getEncoder().encodeToString(watch.state().toArray()),
        told.map(LineTold::text).orElse(""),
        Long.toString(seen));
  }

  /** What the state rests on; titles and limits may change without learning anew. */
  private static String fingerprint(FeedLine line) {
    return "%s %s %s %s %s %s %s %s"
        .formatted(
            line.source().map(Object::toString).orElse("-"),
            line.line(),
            line.contact().map(Object::toString).orElse("-"),
            line.mixer().words(),
            line.strengths(),
            line.added(),
            line.sourceStrength(),
            line.stock().map(FeedStock::fingerprint).orElse("-"));
  }

  FeedLine line() {
    return watch.feedLine();
  }

  FeedLineStatus status() {
    return new FeedLineStatus(line(), watch.standing(), told.map(LineTold::words).orElse(""));
  }

  List<DriftFinding> take(Measurement measurement) {
    if (measurement.point().equals(line().line())) {
      deeds.announce(watch, measurement.stamp());
    }
    List<DriftFinding> found = watch.take(measurement);
    if (!found.isEmpty()) {
      recalled = false;
    }
    return found;
  }

  /** What was put on record about the line meanwhile. */
  List<DriftFinding> catchUp(Stamp now) {
    List<DriftFinding> found = new ArrayList<>();
    for (Evidence record : deeds.after(seen)) {
      found.addAll(apply(record, now));
    }
    return found;
  }

  List<DriftFinding> apply(Evidence record, Stamp now) {
    seen = record.id();
    List<DriftFinding> found = deeds.apply(record, watch, now);
    recalled &= found.isEmpty();
    return found;
  }

  List<DriftFinding> note(LineChange change, Stamp at) {
    recalled = false;
    return watch.note(change, at);
  }

  /** All conditions of the line as it stands now. */
  List<Condition> conditions() {
    DriftStanding standing = watch.standing();
    if (!recalled || standing.open().isPresent() || usualAgain(standing)) {
      recalled = false;
      told = standing.open().flatMap(open -> LineTold.of(line(), open, zone));
    }
    return LineKinds.ALL.stream().map(kind -> LineTold.condition(line(), kind, told)).toList();
  }

  private boolean usualAgain(DriftStanding standing) {
    return standing.phase() == Phase.NORMAL
        && standing.recent().stream().filter(each -> each.start().isAfter(recalledAt)).count()
            >= USUAL_AGAIN;
  }

  private static Instant newest(DriftStanding standing) {
    List<DriftStanding.Recent> recent = standing.recent();
    return recent.isEmpty() ? Instant.EPOCH : recent.get(recent.size() - 1).start();
  }
}
