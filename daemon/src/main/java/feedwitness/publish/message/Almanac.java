package feedwitness.publish.message;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** What became of a day, from midnight to midnight by the clock on the wall. */
final class Almanac {
  private final History history;
  private final EvidenceHistory evidence;
  private final Site site;

  Almanac(History history, EvidenceHistory evidence, Site site) {
    this.history = history;
    this.evidence = evidence;
    this.site = site;
  }

  List<DayFigures> of(LocalDate day) {
    Instant from = day.atStartOfDay(site.zone()).toInstant();
    Instant to = day.plusDays(1).atStartOfDay(site.zone()).toInstant();
    List<Evidence> notices =
        evidence.evidence(
            EvidenceQuery.newest(EvidenceQuery.MOST, Records.NOTICE).within(from, to));
    return site.points().stream()
        .map(point -> DayFigures.of(point, history, from, to, raised(point, notices)))
        .toList();
  }

  private static int raised(MeasuringPoint point, List<Evidence> notices) {
    return (int)
        notices.stream()
            .filter(record -> record.field("change").equals(Notice.Change.RAISED.name()))
            .filter(record -> record.subject().equals(point.name().text()))
            .count();
  }
}
