package feedwitness.publish;

import feedwitness.engine.FeedLineStatus;
import feedwitness.engine.JournalNote;
import feedwitness.engine.LineRecords;
import feedwitness.engine.LiveView;
import feedwitness.engine.PointStatus;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Missing;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.DriftStanding;
import feedwitness.watch.drift.LineChange;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** From a feed line's status to its JSON. */
record FeedLineMapping(LiveView live, EvidenceHistory history) {
  private static final int LOGGED = 40;
  private static final int NOTES_LOOKED_THROUGH = 200;

  static List<FeedLineJson.ChoiceJson> choices() {
    return Arrays.stream(LineChange.values())
        .map(each -> new FeedLineJson.ChoiceJson(Codes.of(each), each.words(), each.rebaselines()))
        .toList();
  }

  FeedLineJson map(FeedLineStatus status) {
    FeedLine line = status.line();
    DriftStanding standing = status.standing();
    double plusMinus = standing.plusMinusPercent();
    return new FeedLineJson(
        line.name().text(),
        line.title(),
        mixer(line.mixer()),
        parts(line),
        line.strengths().stream().map(FeedLineMapping::strength).toList(),
        Codes.of(standing.phase()),
        standing.phase().words(),
        status.told(),
        standing.events(),
        Numbers.conductivity(standing.expected()),
        Numbers.conductivity(standing.expectedPlusMinus()),
        Codes.of(standing.from()),
        from(line, standing),
        Numbers.conductivity(standing.measured()),
        tenth(standing.sharePercent()),
        tenth(plusMinus),
        tenth(standing.ratioExpected()),
        tenth(standing.ratio()),
        tenth(standing.ratio() * plusMinus / standing.sharePercent()),
        new FeedLineJson.LimitsJson(
            BigDecimal.valueOf(line.limits().noticePercent()),
            BigDecimal.valueOf(line.limits().alarmPercent()),
            line.limits().falseAlarms().words()),
        standing.open().map(FeedLineMapping::open).orElse(null),
        standing.recent().stream()
            .map(
                each ->
                    new FeedLineJson.EventJson(
                        Numbers.time(each.start()), tenth(each.percent()), each.strength()))
            .toList(),
        log(line));
  }

  /** Where what is expected is known from, with the recipe's own title. */
  private static String from(FeedLine line, DriftStanding standing) {
    boolean recipe = standing.from() == DriftStanding.From.RECIPE;
    return line.stock()
        .filter(stock -> recipe)
        .map(stock -> "%s: %s".formatted(standing.from().words(), stock.title()))
        .orElse(standing.from().words());
  }

  private static BigDecimal strength(double milliSiemensPerCm) {
    return BigDecimal.valueOf(milliSiemensPerCm).stripTrailingZeros();
  }

  private static @Nullable BigDecimal tenth(double number) {
    return Double.isFinite(number)
        ? BigDecimal.valueOf(number).setScale(1, RoundingMode.HALF_EVEN)
        : null;
  }

  private static FeedLineJson.MixerJson mixer(Mixer mixer) {
    if (mixer instanceof Mixer.Injector injector) {
      return new FeedLineJson.MixerJson(
          "injector", mixer.words(), BigDecimal.valueOf(injector.litresOfFeed()));
    }
    return mixer instanceof Mixer.Siphon siphon
        ? new FeedLineJson.MixerJson("siphon", mixer.words(), BigDecimal.valueOf(siphon.dial()))
        : new FeedLineJson.MixerJson("none", mixer.words(), null);
  }

  private List<FeedLineJson.PartJson> parts(FeedLine line) {
    return Stream.of(
            part("source", line.source()),
            part("tank", line.tank()),
            part("line", Optional.of(line.line())),
            part("drain", line.drain()))
        .flatMap(Optional::stream)
        .toList();
  }

  private Optional<FeedLineJson.PartJson> part(String role, Optional<PointName> name) {
    return name.flatMap(live::point).map(point -> part(role, point));
  }

  private static FeedLineJson.PartJson part(String role, PointStatus status) {
    Optional<Measurement> reading = status.lastReading();
    boolean missing = status.latest().filter(m -> m.sample() instanceof Missing).isPresent();
    return new FeedLineJson.PartJson(
        role,
        status.point().name().text(),
        status.point().title(),
        reading.map(m -> Numbers.conductivity(m.conductivity25MilliSiemensPerCm())).orElse(null),
        reading
            .map(m -> Numbers.conductivity(2 * m.standardUncertaintyMilliSiemensPerCm()))
            .orElse(null),
        reading.map(m -> Numbers.temperature(m.temperatureCelsius())).orElse(null),
        reading
            .map(Measurement::stamp)
            .filter(Stamp::dated)
            .map(at -> Numbers.time(at.wall()))
            .orElse(null),
        missing ? "missing" : reading.isPresent() ? "reading" : "waiting");
  }

  private static FeedLineJson.ChangeJson open(DriftFinding finding) {
    return new FeedLineJson.ChangeJson(
        finding.kind().code(),
        Codes.of(finding.stage()),
        Numbers.time(finding.start()),
        Numbers.time(finding.detected()),
        tenth(finding.sizePercent()),
        tenth(finding.plusMinusPercent()),
        finding.confidence().words(),
        finding.diagnosis().ambiguous(),
        finding.diagnosis().causes().stream()
            .map(
                likely ->
                    new FeedLineJson.CauseJson(
                        Codes.of(likely.cause()), likely.cause().words(), likely.why()))
            .toList(),
        finding.diagnosis().tests(),
        finding.words());
  }

  private List<FeedLineJson.LogJson> log(FeedLine line) {
    List<Evidence> records =
        new ArrayList<>(
            history.evidence(
                EvidenceQuery.newest(LOGGED, LineRecords.FINDING).about(line.name().text())));
    history
        .evidence(
            EvidenceQuery.newest(NOTES_LOOKED_THROUGH, JournalNote.KIND).about(line.line().text()))
        .stream()
        .filter(note -> note.field(LineRecords.FEED_LINE).equals(line.name().text()))
        .forEach(records::add);
    return records.stream()
        .sorted(Comparator.comparing(Evidence::id).reversed())
        .limit(LOGGED)
        .map(FeedLineMapping::logged)
        .toList();
  }

  private static FeedLineJson.LogJson logged(Evidence record) {
    boolean change = record.kind().equals(JournalNote.KIND);
    return new FeedLineJson.LogJson(
        AlarmJson.time(record.at()),
        change ? "change" : record.field("kind"),
        change ? "note" : record.field("stage"),
        record.field(change ? "text" : "words"),
        record.author());
  }
}
