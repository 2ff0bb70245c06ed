package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.alarm.AlarmBook;
import feedwitness.alarm.Aside;
import feedwitness.alarm.Condition;
import feedwitness.alarm.Reply;
import feedwitness.alarm.Standing;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.FeedLine;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * An alarm as written outside.
 *
 * @param id subject and kind
 * @param raised null if it was never raised, or at a time that is not known
 */
record AlarmJson(
    String id,
    String subject,
    @JsonProperty("subject_title") String subjectTitle,
    String kind,
    String title,
    String priority,
    @JsonProperty("needs_answer") boolean needsAnswer,
    String state,
    boolean active,
    @Nullable String raised,
    @Nullable String changed,
    @Nullable BigDecimal value,
    @Nullable BigDecimal limit,
    String unit,
    String words,
    String consequence,
    @JsonProperty("what_to_do") String whatToDo,
    @Nullable AsideJson shelved,
    @JsonProperty("out_of_service") @Nullable AsideJson outOfService,
    @Nullable String suppressed,
    @Nullable AnswerJson answer,
    @JsonProperty("can_undo") boolean canUndo) {
  /** What needs an answer first, the most urgent of those first, then what has stood longest. */
  static final Comparator<Standing> ORDER =
      Comparator.comparing((Standing standing) -> !standing.waits())
          .thenComparing(standing -> !standing.counts())
          .thenComparing(standing -> !standing.state().active())
          .thenComparing(standing -> standing.kind().priority(), Comparator.reverseOrder())
          .thenComparing(Standing::changed)
          .thenComparing(Standing::key);

  /** Somebody set it aside. */
  record AsideJson(String who, String note, @Nullable String since, @Nullable String until) {
    static @Nullable AsideJson of(Optional<Aside> aside) {
      return aside
          .map(
              a ->
                  new AsideJson(
                      a.who(), a.note(), time(a.at()), a.until().map(Numbers::time).orElse(null)))
          .orElse(null);
    }
  }

  /** Somebody answered it. */
  record AnswerJson(String who, String note, @Nullable String time) {}

  /** The list. */
  record ListJson(
      String now,
      @JsonProperty("needs_answer") int needsAnswer,
      @Nullable FloodJson flood,
      List<AlarmJson> alarms) {
    ListJson {
      alarms = List.copyOf(alarms);
    }
  }

  /** Many at once. */
  record FloodJson(int count, String words) {}

  static AlarmJson of(Standing standing, Site site, Instant now) {
    Condition condition = standing.condition();
    return new AlarmJson(
        standing.key().text(),
        condition.subject(),
        title(site, condition.subject()),
        condition.kind().code(),
        condition.kind().title(),
        Codes.of(condition.kind().priority()),
        standing.waits(),
        Codes.of(standing.state()),
        standing.state().active(),
        standing.raised().map(AlarmJson::time).orElse(null),
        time(standing.changed()),
        Numbers.conductivity(condition.value()),
        Numbers.conductivity(condition.limit()),
        condition.unit(),
        condition.words(),
        condition.kind().consequence(),
        condition.kind().remedy(),
        AsideJson.of(standing.shelf()),
        AsideJson.of(standing.out()),
        condition.suppressed().orElse(null),
        standing
            .reply()
            .map(reply -> new AnswerJson(reply.who(), reply.note(), time(reply.at())))
            .orElse(null),
        canUndo(standing, now));
  }

  private static boolean canUndo(Standing standing, Instant now) {
    Optional<Reply> reply = standing.reply();
    return reply.isPresent()
        && standing.counts()
        && !standing.state().waits()
        && Duration.between(reply.get().at().wall(), now).compareTo(AlarmBook.TAKE_BACK) < 0;
  }

  private static String title(Site site, String subject) {
    Optional<MeasuringPoint> point =
        PointName.isValid(subject) ? site.point(new PointName(subject)) : Optional.empty();
    return point
        .map(MeasuringPoint::title)
        .or(
            () ->
                site.feedLines().stream()
                    .filter(line -> line.name().text().equals(subject))
                    .map(FeedLine::title)
                    .findFirst())
        .orElse("Feedwitness");
  }

  static @Nullable String time(Stamp stamp) {
    return stamp.dated() ? Numbers.time(stamp.wall()) : null;
  }
}
