package feedwitness.check;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One check on one printable page.
 *
 * @param title heading
 * @param sections in order
 */
public record CheckRecord(String title, List<Section> sections) {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.UK);

  public CheckRecord {
    sections = List.copyOf(sections);
  }

  /** Lines that belong together. */
  public record Section(String title, List<Line> lines) {
    public Section {
      lines = List.copyOf(lines);
    }
  }

  /** What and how much. */
  public record Line(String label, String value) {}

  /** Of a check, finished or not. */
  public static CheckRecord of(ProbeHistory.Check check, String nursery, ZoneId zone) {
    CheckStarted started = check.started();
    List<Section> sections = new ArrayList<>();
    sections.add(head(check, nursery, zone));
    sections.add(
        new Section(
            "Standards", started.titles().stream().map(t -> new Line("standard", t)).toList()));
    for (Round round : Round.values()) {
      for (StandardMeasured one : check.round(round)) {
        sections.add(result(one, zone));
      }
    }
    List<Line> deeds = deeds(check, zone);
    if (!deeds.isEmpty()) {
      sections.add(new Section("What was done", deeds));
    }
    sections.add(verdict(check));
    return new CheckRecord(
        "Check of %s, %s".formatted(started.subject(), when(started.at(), zone)), sections);
  }

  private static Section head(ProbeHistory.Check check, String nursery, ZoneId zone) {
    CheckStarted started = check.started();
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("nursery", nursery));
    lines.add(new Line("probe or meter", started.subject().toText()));
    lines.add(new Line("device profile", started.basis().profile()));
    lines.add(new Line("checked by", started.author()));
    lines.add(new Line("begun", when(started.at(), zone)));
    check.closed().ifPresent(end -> lines.add(new Line("ended", when(end.at(), zone))));
    lines.add(new Line("tolerance", "± " + Say.percent(started.tolerancePercent())));
    lines.add(new Line("calibration in use", CurveText.words(started.basis().calibration())));
    lines.add(
        new Line(
            "temperature compensation",
            started.basis().indicatedAt25() ? "by the instrument, to 25 °C" : "by Feedwitness"));
    lines.add(
        new Line("reading before the check", Say.conductivity(started.before()) + " at 25 °C"));
    lines.add(new Line("number of the check", started.entry().check()));
    started.notes().forEach(note -> lines.add(new Line("accepted", note)));
    return new Section("Check", lines);
  }

  private static Section result(StandardMeasured one, ZoneId zone) {
    StandardResult result = one.result();
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("measured", when(one.at(), zone)));
    lines.add(new Line("temperature", Say.celsius(result.celsius())));
    lines.add(new Line("should read", Say.conductivity(result.reference())));
    lines.add(
        new Line(
            "reads",
            "%s (mean of %d)".formatted(Say.conductivity(result.shown()), result.readings())));
    lines.add(new Line("the instrument itself said", Say.conductivity(result.indicated())));
    lines.add(
        new Line(
            "error",
            "%s ± %s"
                .formatted(
                    Say.error(result.errorPercent()), Say.percent(result.expandedPercent()))));
    for (Doubt doubt : result.doubts()) {
      lines.add(
          new Line(
              "uncertainty from " + doubt.source().words(),
              "%s %% standard%s"
                  .formatted(
                      Say.fixed(doubt.standardPercent(), 2), doubt.assumed() ? ", assumed" : "")));
    }
    lines.add(
        new Line(
            "all together",
            "%s %% standard, ± %s for about 95 %%"
                .formatted(
                    Say.fixed(result.standardPercent(), 2),
                    Say.percent(result.expandedPercent()))));
    lines.add(new Line("verdict in this standard", result.verdict().words()));
    return new Section("%s: %s".formatted(one.round().words(), result.title()), lines);
  }

  private static List<Line> deeds(ProbeHistory.Check check, ZoneId zone) {
    List<Line> lines = new ArrayList<>();
    for (CheckEvidence record : check.since()) {
      if (record instanceof ProbeCleaned one) {
        lines.add(deed("cleaned", one, one.how(), zone));
      } else if (record instanceof CurveAdjusted one) {
        lines.add(deed("adjusted", one, one.words(), zone));
      } else if (record instanceof CheckNoted one) {
        lines.add(deed("noted", one, one.note(), zone));
      } else if (record instanceof ProbeReturned one) {
        lines.add(deed("back in its place", one, one.note(), zone));
      }
    }
    return lines;
  }

  private static Line deed(String label, CheckEvidence record, String words, ZoneId zone) {
    String by = "%s by %s".formatted(when(record.at(), zone), record.author());
    return new Line(label, words.isBlank() ? by : by + ": " + words);
  }

  private static Section verdict(ProbeHistory.Check check) {
    List<Line> lines = new ArrayList<>();
    check
        .lastRound()
        .ifPresent(round -> lines.add(new Line(round.words(), check.verdict(round).words())));
    lines.add(
        new Line(
            "as found",
            check.round(Round.AS_FOUND).isEmpty()
                ? "not measured to the end"
                : check.verdict(Round.AS_FOUND).words()));
    lines.add(
        new Line("check", check.closed().map(end -> end.ending().words()).orElse("still open")));
    check
        .closed()
        .filter(end -> !end.note().isBlank())
        .ifPresent(end -> lines.add(new Line("note", end.note())));
    return new Section("Verdict", lines.stream().distinct().toList());
  }

  private static String when(Instant at, ZoneId zone) {
    return WHEN.format(at.atZone(zone));
  }
}
