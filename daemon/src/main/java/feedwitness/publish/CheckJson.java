package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.calibration.StandardSolution;
import feedwitness.check.ChartPoint;
import feedwitness.check.CheckInterval;
import feedwitness.check.CheckRecord;
import feedwitness.check.CheckSubject;
import feedwitness.check.CheckView;
import feedwitness.check.ComparisonMade;
import feedwitness.check.ControlChart;
import feedwitness.check.Mark;
import feedwitness.check.ProbeHistory;
import feedwitness.check.RangeQualified;
import feedwitness.engine.CheckBench;
import feedwitness.engine.LiveView;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Checks as JSON. Errors and uncertainties are in % of what was right. */
final class CheckJson {
  private static final int MOST_CHECKS = 100;

  private CheckJson() {}

  /** All there is to be checked, and with what. */
  record Overview(String now, List<Bottle> shelf, List<Stand> subjects) {
    Overview {
      shelf = List.copyOf(shelf);
      subjects = List.copyOf(subjects);
    }
  }

  /** A bottle. */
  record Bottle(
      String name,
      String title,
      @JsonProperty("nominal_mS_cm") @Nullable BigDecimal nominal,
      String lot,
      @JsonProperty("certificate_percent") @Nullable BigDecimal certificate,
      @Nullable String opened,
      @Nullable String expires,
      List<String> warnings) {
    Bottle {
      warnings = List.copyOf(warnings);
    }
  }

  /** How one stands. */
  record Stand(
      String kind,
      String name,
      String title,
      String status,
      String words,
      @JsonProperty("due_at") @Nullable String dueAt,
      String verdict,
      boolean checking,
      @Nullable String aside,
      @JsonProperty("out_of_place") @Nullable String outOfPlace,
      @Nullable String trouble) {}

  /** One with its open check, its chart and what is on record. */
  record Detail(
      Stand stand,
      @Nullable Open open,
      Chart chart,
      boolean undoable,
      List<Past> checks,
      List<Compared> compared,
      List<Doubted> doubted) {
    Detail {
      checks = List.copyOf(checks);
      compared = List.copyOf(compared);
      doubted = List.copyOf(doubted);
    }
  }

  /** A check on its way. */
  record Open(
      String id,
      String who,
      String begun,
      String round,
      String phase,
      @Nullable String standard,
      String guide,
      @Nullable String settling,
      List<String> results,
      String verdict,
      @Nullable String adjustment) {
    Open {
      results = List.copyOf(results);
    }

    static @Nullable Open of(@Nullable CheckView view) {
      return view == null
          ? null
          : new Open(
              view.id(),
              view.author(),
              Numbers.time(view.begun()),
              Codes.of(view.round()),
              Codes.of(view.phase()),
              view.standard().orElse(null),
              view.guide(),
              view.settling().orElse(null),
              view.results(),
              Codes.of(view.verdict()),
              view.adjustment().orElse(null));
    }
  }

  /** The control chart. */
  record Chart(
      List<Dot> points,
      List<Deed> marks,
      @JsonProperty("tolerance_percent") @Nullable BigDecimal tolerance,
      @JsonProperty("middle_percent") @Nullable BigDecimal middle,
      @JsonProperty("warning_percent") @Nullable BigDecimal warning,
      String loss,
      @Nullable String leaves,
      String words) {
    Chart {
      points = List.copyOf(points);
      marks = List.copyOf(marks);
    }

    static Chart of(ControlChart chart, ZoneId zone) {
      return new Chart(
          chart.points().stream().map(Dot::of).toList(),
          chart.marks().stream()
              .map(m -> new Deed(Numbers.time(m.at()), m.adjustment(), m.words()))
              .toList(),
          Numbers.temperature(chart.tolerancePercent()),
          Numbers.temperature(chart.middlePercent()),
          Numbers.temperature(chart.warningPercent()),
          Codes.of(chart.loss()),
          chart.leaves().map(Numbers::time).orElse(null),
          chart.words(zone));
    }
  }

  /** One error. */
  record Dot(
      String time,
      String source,
      @Nullable BigDecimal error,
      @Nullable BigDecimal uncertainty,
      String verdict,
      String against) {
    static Dot of(ChartPoint point) {
      return new Dot(
          Numbers.time(point.at()),
          Codes.of(point.source()),
          Numbers.temperature(point.percent()),
          Numbers.temperature(2 * point.standardPercent()),
          Codes.of(point.verdict()),
          point.bottles());
    }
  }

  /** A cleaning or an adjustment. */
  record Deed(String time, boolean adjustment, String words) {}

  /** A check on record. */
  record Past(String id, String begun, String who, String verdict, String end) {
    static Past of(ProbeHistory.Check check) {
      return new Past(
          check.started().entry().check(),
          Numbers.time(check.started().at()),
          check.started().author(),
          Codes.of(check.verdict()),
          check.closed().map(end -> end.ending().words()).orElse("still open"));
    }
  }

  /** A comparison with something else than a standard. */
  record Compared(String time, String who, String against, String verdict, String words) {
    static Compared of(ComparisonMade made) {
      return new Compared(
          Numbers.time(made.at()),
          made.author(),
          Codes.of(made.type()),
          Codes.of(made.verdict()),
          made.note().isEmpty() ? made.words() : made.words() + "; " + made.note());
    }
  }

  /** Measurements that a failed check casts doubt on, with the likely error in the middle. */
  record Doubted(
      String check,
      String from,
      String to,
      @JsonProperty("first_after") String firstAfter,
      String last,
      @JsonProperty("error_at_start") @Nullable BigDecimal start,
      @JsonProperty("error_at_end") @Nullable BigDecimal end,
      String words) {
    static Doubted of(RangeQualified range) {
      return new Doubted(
          range.entry().check(),
          Numbers.time(range.after().at()),
          Numbers.time(range.through().at()),
          range.after().id(),
          range.through().id(),
          likely(range, range.after()),
          likely(range, range.through()),
          range.note());
    }

    private static @Nullable BigDecimal likely(RangeQualified range, Mark mark) {
      return Numbers.temperature(range.likely(mark.at(), Double.NaN).percent());
    }
  }

  /** What a step came to, and how it stands now. */
  record Done(String words, Detail now) {}

  /** One printable page. */
  record Page(String id, String title, List<Part> sections) {
    Page {
      sections = List.copyOf(sections);
    }
  }

  /** Lines that belong together. */
  record Part(String title, List<Row> lines) {
    Part {
      lines = List.copyOf(lines);
    }
  }

  /** What and how much. */
  record Row(String label, String value) {}

  static Overview overview(CheckBench bench, LiveView live) {
    LocalDate today = live.now().atZone(live.site().zone()).toLocalDate();
    return new Overview(
        Numbers.time(live.now()),
        bench.shelf().standards().stream().map(bottle -> bottle(bottle, today)).toList(),
        bench.subjects().stream().map(subject -> stand(bench.stand(subject))).toList());
  }

  private static Bottle bottle(StandardSolution standard, LocalDate today) {
    return new Bottle(
        standard.name(),
        standard.title(),
        Numbers.conductivity(standard.nominal()),
        standard.lot(),
        Numbers.temperature(standard.certificatePercent()),
        standard.opened().map(LocalDate::toString).orElse(null),
        standard.expires().map(LocalDate::toString).orElse(null),
        standard.warnings(today));
  }

  private static Stand stand(CheckBench.Stand stand) {
    CheckSubject subject = stand.subject();
    CheckInterval.Due due = stand.due();
    return new Stand(
        Codes.of(subject.kind()),
        subject.name().text(),
        stand.title(),
        Codes.of(due.status()),
        due.words(),
        due.at().map(Numbers::time).orElse(null),
        Codes.of(stand.verdict()),
        stand.open().isPresent(),
        stand.aside().orElse(null),
        stand.outOfPlace().orElse(null),
        stand.trouble().orElse(null));
  }

  static Detail detail(CheckBench.Stand stand, ProbeHistory history, ZoneId zone) {
    List<Past> checks = history.checks().stream().map(Past::of).toList();
    List<Compared> compared = history.comparisons().stream().map(Compared::of).toList();
    return new Detail(
        stand(stand),
        Open.of(stand.open().orElse(null)),
        Chart.of(stand.chart(), zone),
        stand.undoable(),
        newest(checks),
        newest(compared),
        history.qualifications().stream().map(Doubted::of).toList());
  }

  private static <T> List<T> newest(List<T> oldestFirst) {
    List<T> newestFirst = new ArrayList<>(oldestFirst);
    Collections.reverse(newestFirst);
    return newestFirst.subList(0, Math.min(MOST_CHECKS, newestFirst.size()));
  }

  static Page record(String id, CheckRecord record) {
    return new Page(
        id,
        record.title(),
        record.sections().stream()
            .map(
                section ->
                    new Part(
                        section.title(),
                        section.lines().stream()
                            .map(line -> new Row(line.label(), line.value()))
                            .toList()))
            .toList());
  }
}
