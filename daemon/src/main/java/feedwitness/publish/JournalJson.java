package feedwitness.publish;

import feedwitness.engine.AlarmRecords;
import feedwitness.engine.JournalNote;
import feedwitness.ledger.Evidence;
import feedwitness.quantity.PointName;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * An entry of the journal as written outside.
 *
 * @param id never given twice
 * @param number counts records in their order
 * @param time null if the clock was not trusted then
 */
record JournalJson(
    String id,
    long number,
    @Nullable String time,
    String kind,
    @Nullable String point,
    @Nullable String block,
    String author,
    String text,
    String plants,
    @Nullable String photo,
    @Nullable AlarmPart alarm,
    @Nullable FeedingPart feeding) {
  static final String FEEDING = "feeding";
  static final String STRENGTH = "strength";

  /** What happened to an alarm. */
  record AlarmPart(
      String id,
      String title,
      String priority,
      String transition,
      String state,
      @Nullable BigDecimal value,
      @Nullable BigDecimal limit,
      String unit,
      String words,
      String note) {}

  /** What somebody said about feeding. */
  record FeedingPart(String what, @Nullable String strength, String title) {}

  /** A page of them. */
  record Page(List<JournalJson> entries, @Nullable Long next) {
    Page {
      entries = List.copyOf(entries);
    }
  }

  static JournalJson of(Evidence record) {
    boolean alarm = record.kind().equals(AlarmRecords.KIND);
    boolean note = record.kind().equals(JournalNote.KIND);
    boolean about = PointName.isValid(record.subject());
    return new JournalJson(
        record.key(),
        record.id(),
        AlarmJson.time(record.at()),
        alarm || note ? record.kind() : FEEDING,
        about && !record.subject().equals("service") ? record.subject() : null,
        record.field("block").isEmpty() ? null : record.field("block"),
        record.author(),
        record.field("text"),
        record.field("plants"),
        record.hasAttachment() ? photo(record.id()) : null,
        alarm ? alarm(record) : null,
        alarm || note ? null : feeding(record));
  }

  static String photo(long number) {
    return Routes.API + "/journal/" + number + "/photo";
  }

  static AlarmPart alarm(Evidence record) {
    return new AlarmPart(
        record.subject() + "/" + record.field("kind"),
        record.field("title"),
        code(record.field("priority")),
        code(record.field("transition")),
        code(record.field("state")),
        number(record.field("value")),
        number(record.field("limit")),
        record.field("unit"),
        record.field("words"),
        record.field("note"));
  }

  private static FeedingPart feeding(Evidence record) {
    boolean named = record.kind().equals(STRENGTH);
    String strength = record.field(named ? "name" : "strength");
    return new FeedingPart(
        named ? "named" : code(record.field("what")),
        strength.isEmpty() ? null : strength,
        record.field("title"));
  }

  private static String code(String constant) {
    return constant.toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static @Nullable BigDecimal number(String text) {
    try {
      return text.isEmpty() ? null : Numbers.conductivity(Double.parseDouble(text));
    } catch (NumberFormatException e) {
      return null;
    }
  }
}
