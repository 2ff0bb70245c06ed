package feedwitness.publish.message;

import feedwitness.publish.message.Notice.Change;
import feedwitness.site.Urgency;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The words of letters. Times are those of the nursery's clock on the wall. */
final class LetterText {
  /** More in one message are counted, not listed. */
  static final int MOST_ITEMS = 60;

  private static final int LONGEST_SUBJECT = 150;
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.UK);

  /** A clock that was never set says something before. */
  private static final Instant EARLIEST = Instant.parse("2020-01-01T00:00:00Z");

  private static final String FOOT =
      "Feedwitness measures and advises. It opens no valve and is no safety interlock.\n";

  private final String nursery;
  private final ZoneId zone;

  LetterText(String nursery, ZoneId zone) {
    this.nursery = Words.line(nursery, 80);
    this.zone = zone;
  }

  String subject(List<Item> items) {
    List<Item> sorted = sorted(items);
    Item first = sorted.get(0);
    boolean unanswered = items.stream().anyMatch(item -> item.escalation() > 0);
    String what =
        (unanswered ? "Nobody has answered: " : "") + mark(first) + first.notice().title();
    String more = items.size() == 1 ? "" : " (and %d more)".formatted(items.size() - 1);
    return Words.line(
            nursery + ": " + Words.line(what, LONGEST_SUBJECT - nursery.length() - 20),
            LONGEST_SUBJECT)
        + more;
  }

  private static String mark(Item item) {
    return switch (item.notice().change()) {
      case CLEARED -> "back to normal: ";
      case NOTED -> "";
      default -> item.urgency() == Urgency.HIGH ? "URGENT: " : "alarm: ";
    };
  }

  String alarms(List<Item> items, int leftOut, Instant now) {
    StringBuilder text = new StringBuilder();
    text.append(nursery).append(", ").append(moment(now)).append("\n\n");
    sorted(items).stream().limit(MOST_ITEMS).forEach(item -> text.append(paragraph(item)));
    int more = Math.max(0, items.size() - MOST_ITEMS) + leftOut;
    if (more > 0) {
      text.append("And %d more; the page lists them all.%n%n".formatted(more));
    }
    if (items.stream().anyMatch(item -> item.notice().change() == Change.RAISED)) {
      text.append("Answer on the page: acknowledge the alarm, then no more is asked.\n");
    }
    return text.append(FOOT).toString();
  }

  private String paragraph(Item item) {
    Notice notice = item.notice();
    List<String> lines = new ArrayList<>();
    lines.add(
        switch (notice.change()) {
          case CLEARED -> "Back to normal: %s".formatted(notice.subject());
          case NOTED -> "Note: %s".formatted(notice.subject());
          default ->
              "%s priority alarm: %s"
                  .formatted(capital(Letters.code(notice.urgency())), notice.subject());
        });
    lines.add(notice.title());
    lines.add((notice.change() == Change.RAISED ? "Since " : "At ") + moment(notice.at()));
    if (item.escalation() > 0) {
      lines.add("Nobody has answered yet; told again, number %d".formatted(item.escalation()));
    }
    if (!notice.remedy().isEmpty() && notice.change() != Change.CLEARED) {
      lines.add("What to do: " + notice.remedy());
    }
    return String.join("\n  ", lines) + "\n\n";
  }

  String dailySubject(LocalDate day, List<DayFigures> figures) {
    int alarms = figures.stream().mapToInt(DayFigures::alarms).sum();
    return Words.line(
        "%s: still watching, %s, %s".formatted(nursery, DAY.format(day), count(alarms, "alarm")),
        LONGEST_SUBJECT);
  }

  String daily(LocalDate day, List<DayFigures> figures) {
    String points = figures.stream().map(LetterText::line).collect(Collectors.joining("\n"));
    return """
        %s, %s: still watching.
        Conductivity in mS/cm at 25 °C.

        %s

        If this note stays away one day, look whether the service runs.
        %s"""
        .formatted(
            nursery,
            DAY.format(day),
            figures.isEmpty() ? "No measuring point is set up yet." : points,
            FOOT);
  }

  private static String line(DayFigures day) {
    String said =
        day.readings() == 0
            ? "no reading"
            : "mean %s, low %s, high %s"
                .formatted(number(day.mean()), number(day.low()), number(day.high()));
    String gaps =
        day.typed()
            ? count(day.readings(), "reading") + " typed in"
            : day.gaps() == 0
                ? "no gaps"
                : "%s, %s without readings"
                    .formatted(count(day.gaps(), "gap"), hours(day.silent()));
    return "%s: %s; %s; %s".formatted(day.title(), said, gaps, count(day.alarms(), "alarm"));
  }

  String testSubject() {
    return nursery + ": test message";
  }

  String test(Instant now) {
    return """
        %s, %s: somebody pressed the test button.
        If you can read this, alarms will reach you here too.
        %s"""
        .formatted(nursery, moment(now), FOOT);
  }

  private String moment(Instant at) {
    return at.isBefore(EARLIEST) ? "an unknown time" : MOMENT.format(at.atZone(zone));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String count(int number, String what) {
    return number == 0 ? "no " + what + "s" : number + " " + what + (number == 1 ? "" : "s");
  }

  private static String hours(Duration duration) {
    return "%d h %02d min".formatted(duration.toHours(), duration.toMinutesPart());
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  /** What is urgent and stands comes first. */
  private static List<Item> sorted(List<Item> items) {
    return items.stream()
        .sorted(
            Comparator.comparing((Item item) -> item.notice().change() != Change.RAISED)
                .thenComparing(Item::urgency, Comparator.reverseOrder()))
        .toList();
  }
}
