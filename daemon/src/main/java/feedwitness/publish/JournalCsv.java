package feedwitness.publish;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import java.io.IOException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * The journal as a table (RFC 4180), oldest first, in constant memory. Text of people that a
 * spreadsheet would take for a formula gets an apostrophe in front.
 */
public final class JournalCsv {
  private static final List<String> COLUMNS =
      List.of(
          "time",
          "id",
          "kind",
          "point",
          "block",
          "author",
          "what",
          "priority",
          "state",
          "value",
          "limit",
          "unit",
          "text",
          "plants",
          "photo");
  private static final int PAGE = 500;

  private final DateTimeFormatter times;
  private final Appendable out;

  /** {@code zone} of all times. */
  public JournalCsv(ZoneId zone, Appendable out) {
    this.times = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSXXX").withZone(zone);
    this.out = out;
  }

  /**
   * Writes the header and every entry.
   *
   * @throws IOException if {@code out} fails
   */
  public void write(EvidenceHistory history) throws IOException {
    line(COLUMNS);
    long after = 0;
    String[] kinds = JournalQuery.KINDS.toArray(String[]::new);
    List<Evidence> page;
    do {
      page = history.evidence(EvidenceQuery.after(after, PAGE, kinds));
      for (Evidence record : page) {
        row(record);
        after = record.id();
      }
    } while (page.size() == PAGE);
  }

  private void row(Evidence record) throws IOException {
    JournalJson entry = JournalJson.of(record);
    JournalJson.AlarmPart alarm = entry.alarm();
    JournalJson.FeedingPart feeding = entry.feeding();
    String what = alarm == null ? "" : alarm.title() + ": " + alarm.transition();
    String said = alarm == null ? entry.text() : alarm.words() + note(alarm.note());
    line(
        List.of(
            record.at().dated() ? times.format(record.at().wall()) : "",
            record.key(),
            entry.kind(),
            text(entry.point()),
            text(entry.block()),
            entry.author(),
            feeding == null ? what : (feeding.what() + " " + text(feeding.strength())).strip(),
            alarm == null ? "" : alarm.priority(),
            alarm == null ? "" : alarm.state(),
            alarm == null ? "" : number(alarm.value()),
            alarm == null ? "" : number(alarm.limit()),
            alarm == null ? "" : alarm.unit(),
            feeding == null ? said : feeding.title(),
            entry.plants(),
            record.hasAttachment() ? "yes" : ""));
  }

  private static String note(String note) {
    return note.isEmpty() ? "" : " — " + note;
  }

  private static String text(@org.jspecify.annotations.Nullable String text) {
    return text == null ? "" : text;
  }

  private static String number(java.math.@org.jspecify.annotations.Nullable BigDecimal number) {
    return number == null ? "" : number.toPlainString();
  }

  private void line(List<String> fields) throws IOException {
    for (int i = 0; i < fields.size(); i++) {
      out.append(i == 0 ? "" : ",").append(quoted(fields.get(i)));
    }
    out.append("\r\n");
  }

  private static String quoted(String field) {
    String safe = field.matches("(?s)[=+@\\t\\r-].*") && !isNumber(field) ? "'" + field : field;
    return safe.matches("(?s).*[\",\\r\\n].*") ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
  }

  private static boolean isNumber(String field) {
    return field.toLowerCase(Locale.ROOT).matches("-?[0-9.]+");
  }
}
