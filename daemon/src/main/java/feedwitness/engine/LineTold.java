package feedwitness.engine;

import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.Condition;
import feedwitness.alarm.LineKinds;
import feedwitness.alarm.Presence;
import feedwitness.site.FeedLine;
import feedwitness.watch.diagnosis.Diagnosis;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What stands about a feed line and must be told: which alarm, how large, in which words.
 * Remembered over a restart.
 *
 * @param kind code of one of {@link LineKinds#ALL}
 * @param percent off what is normal; NaN if there is no size
 * @param words item, value, limit, start, confidence and likely causes
 */
record LineTold(String kind, double percent, String words) {
  private static final String SEPARATOR = "\t";
  private static final int PARTS = 3;

  /** Of a finding that lasts; empty if it is only for the chart. */
  static Optional<LineTold> of(FeedLine line, DriftFinding finding, ZoneId zone) {
    if (finding.stage().compareTo(Stage.NOTICE) < 0) {
      return Optional.empty();
    }
    return Optional.of(
        new LineTold(kind(finding).code(), finding.sizePercent(), words(line, finding, zone)));
  }

  private static AlarmKind kind(DriftFinding finding) {
    return switch (finding.kind()) {
      case STEP, RAMP ->
          finding.stage() == Stage.ALARM
              ? LineKinds.INJECTOR_DRIFT
              : LineKinds.INJECTOR_DRIFT_NOTICE;
      case PLAIN_WATER -> LineKinds.PLAIN_WATER;
      default -> LineKinds.FEED_UNCLEAR;
    };
  }

  private static String words(FeedLine line, DriftFinding finding, ZoneId zone) {
    String since =
        DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH)
            .withZone(zone)
            .format(finding.start());
    if (!finding.kind().isDrift()) {
      return "%s; since %s".formatted(finding.words(), since);
    }
    double size = finding.sizePercent();
    double within = finding.plusMinusPercent();
    boolean alarm = finding.stage() == Stage.ALARM;
    return String.format(
        Locale.ROOT,
        "%s: %.1f %% %s than normal%s, %s from %.0f %%, since %s, %s%s",
        line.name(),
        Math.abs(size),
        size < 0 ? "less feed" : "more feed",
        Double.isNaN(within) ? "" : String.format(Locale.ROOT, " (± %.1f %%)", within),
        alarm ? "alarm" : "notice",
        alarm ? line.limits().alarmPercent() : line.limits().noticePercent(),
        since,
        finding.confidence().words(),
        causes(finding.diagnosis()));
  }

  private static String causes(Diagnosis why) {
    if (why.causes().isEmpty()) {
      return "";
    }
    String ranked =
        why.causes().stream()
            .map(likely -> likely.cause().words())
            .collect(Collectors.joining(" / "));
    return why.ambiguous()
        ? "; which of these can't be told, likeliest first: " + ranked
        : "; likely causes, likeliest first: " + ranked;
  }

  /** Whether it is of a kind. */
  boolean is(AlarmKind other) {
    return kind.equals(other.code());
  }

  /** The condition of a kind, there or not, by what stands. */
  static Condition condition(FeedLine line, AlarmKind kind, Optional<LineTold> told) {
    boolean there = told.filter(each -> each.is(kind)).isPresent();
    boolean drift =
        kind.equals(LineKinds.INJECTOR_DRIFT) || kind.equals(LineKinds.INJECTOR_DRIFT_NOTICE);
    if (!there) {
      String otherwise = told.map(LineTold::words).orElse(line.name() + ": feed is as usual again");
      return Condition.plain(line.name().text(), kind, Presence.CLEAR, otherwise);
    }
    LineTold stands = told.orElseThrow();
    double limit =
        kind.equals(LineKinds.INJECTOR_DRIFT)
            ? line.limits().alarmPercent()
            : line.limits().noticePercent();
    boolean sized = drift && !Double.isNaN(stands.percent());
    return new Condition(
        line.name().text(),
        kind,
        Presence.ACTIVE,
        sized ? Math.rint(10 * Math.abs(stands.percent())) / 10 : Double.NaN,
        sized ? limit : Double.NaN,
        sized ? "%" : "",
        stands.words(),
        Optional.empty());
  }

  /** To be kept. */
  String text() {
    return String.join(SEPARATOR, kind, Double.toString(percent), words.replace('\n', ' '));
  }

  /**
   * Reads {@link #text()}.
   *
   * @throws IllegalArgumentException if it is no such text
   */
  static LineTold parse(String text) {
    String[] parts = text.split(SEPARATOR, PARTS);
    if (parts.length != PARTS) {
      throw new IllegalArgumentException("what was told of a feed line cannot be read");
    }
    return new LineTold(parts[0], Double.parseDouble(parts[1]), parts[2]);
  }
}
