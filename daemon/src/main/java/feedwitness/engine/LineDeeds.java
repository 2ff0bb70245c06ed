package feedwitness.engine;

import feedwitness.check.CheckClosed;
import feedwitness.check.CurveAdjusted;
import feedwitness.check.ProbeCleaned;
import feedwitness.check.Round;
import feedwitness.check.StandardMeasured;
import feedwitness.check.Verdict;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.FeedLine;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import feedwitness.watch.diagnosis.Evidence.Check;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.DriftWatch;
import feedwitness.watch.drift.LineChange;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tinylog.Logger;

/**
 * What was done about a feed line besides what is logged there: checks of its probe, cleaning and
 * adjusting in a check, what runs, strengths that were named. Read from the records, so that a
 * replay knows the same. Not for several threads.
 */
final class LineDeeds {
  private static final int PAGE = 200;
  private static final String[] KINDS = {
    StandardMeasured.KIND,
    CheckClosed.KIND,
    ProbeCleaned.KIND,
    CurveAdjusted.KIND,
    FeedingBook.KIND,
    FeedingBook.STRENGTH_KIND
  };

  private final FeedLine line;
  private final Optional<MeasuringPoint> point;
  private final Site site;
  private final EvidenceHistory history;
  private final Feeding feeding = new Feeding();

  LineDeeds(FeedLine line, Site site, EvidenceHistory history) {
    this.line = line;
    this.point = site.point(line.line());
    this.site = site;
    this.history = history;
  }

  /** What runs and which strengths were named up to a record, for a watch that begins there. */
  void begin(DriftWatch watch, long upTo) {
    List<Evidence> newest =
        new ArrayList<>(
            history.evidence(
                EvidenceQuery.newest(PAGE, FeedingBook.KIND, FeedingBook.STRENGTH_KIND)
                    .about(line.line().text())
                    .before(upTo + 1)));
    Collections.reverse(newest);
    newest.forEach(record -> apply(record, watch, record.at()));
  }

  /** Records after one, in their order. */
  List<Evidence> after(long id) {
    return history.evidence(EvidenceQuery.after(id, PAGE, KINDS).about(line.line().text()));
  }

  /** Lets the watch know whether plain water is meant to run when a reading is taken. */
  void announce(DriftWatch watch, Stamp at) {
    point.ifPresent(
        where ->
            watch.plainAnnounced(
                feeding.at(where, site.zone(), at).what() == Running.What.PLAIN_WATER));
  }

  /** Takes a record; what the watch says to it. */
  List<DriftFinding> apply(Evidence record, DriftWatch watch, Stamp now) {
    try {
      return switch (record.kind()) {
        case JournalNote.KIND -> changed(record, watch, now);
        case ProbeCleaned.KIND -> watch.note(LineChange.CLEANED, now);
        case CurveAdjusted.KIND -> watch.note(LineChange.CALIBRATED, now);
        case StandardMeasured.KIND -> failed(record) ? watch.checked(Check.FAILED, now) : List.of();
        case CheckClosed.KIND -> closed(record, watch, now);
        default -> fed(record, watch);
      };
    } catch (IllegalArgumentException e) {
      Logger.warn("record {} is of another program: {}", record.key(), e.getMessage());
      return List.of();
    }
  }

  private List<DriftFinding> changed(Evidence note, DriftWatch watch, Stamp now) {
    return note.field(LineRecords.FEED_LINE).equals(line.name().text())
        ? watch.note(
            LineChange.valueOf(
                note.field(LineRecords.CHANGE).toUpperCase(Locale.ROOT).replace('-', '_')),
            now)
        : List.of();
  }

  /** A probe that was found wrong in one standard is wrong; cleaned since, it tells nothing. */
  private static boolean failed(Evidence record) {
    StandardMeasured measured = StandardMeasured.fromFields(record.fields());
    return measured.round() == Round.AS_FOUND && measured.result().verdict() == Verdict.FAIL;
  }

  /** A probe passed if it was right as it was found, in every standard. */
  private List<DriftFinding> closed(Evidence record, DriftWatch watch, Stamp now) {
    String check = CheckClosed.fromFields(record.fields()).entry().check();
    List<Verdict> found =
        history
            .evidence(
                EvidenceQuery.newest(PAGE, StandardMeasured.KIND)
                    .about(record.subject())
                    .before(record.id()))
            .stream()
            .map(each -> StandardMeasured.fromFields(each.fields()))
            .filter(each -> each.entry().check().equals(check))
            .filter(each -> each.round() == Round.AS_FOUND)
            .map(each -> each.result().verdict())
            .toList();
    return Verdict.together(found) == Verdict.PASS ? watch.checked(Check.PASSED, now) : List.of();
  }

  private List<DriftFinding> fed(Evidence record, DriftWatch watch) {
    PointName where = new PointName(record.subject());
    if (record.kind().equals(FeedingBook.STRENGTH_KIND)) {
      watch.named(Double.parseDouble(record.field("conductivity")));
    } else {
      feeding.say(
          where,
          new Running(
              Running.What.valueOf(record.field("what")),
              record.field("strength"),
              record.author(),
              Optional.of(record.at())));
    }
    return List.of();
  }
}
