package feedwitness.app;

import feedwitness.app.table.Columns;
import feedwitness.app.table.DateOrder;
import feedwitness.app.table.Heading;
import feedwitness.app.table.NumberEvidence;
import feedwitness.app.table.NumberStyle;
import feedwitness.app.table.TimeEvidence;
import feedwitness.engine.TypedReading.Compensated;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a table is read: what was said, else what the whole file proves, else a question.
 *
 * @param questions what must be answered before anything is imported
 * @param times in words, how times are written
 * @param assumedStarts of stretches without a right clock, by number
 */
record ImportPlan(
    TableFile file,
    PointName point,
    Columns columns,
    NumberStyle numbers,
    DateOrder dates,
    String times,
    boolean needsZone,
    ZoneId zone,
    Compensated compensated,
    Instant notBefore,
    Map<Integer, Instant> assumedStarts,
    Instant latest,
    List<String> questions) {
  ImportPlan {
    assumedStarts = Map.copyOf(assumedStarts);
    questions = List.copyOf(questions);
  }

  /**
   * Reads the whole file once for evidence.
   *
   * @param latest later times lie in the future
   * @throws IOException in words for people
   */
  static ImportPlan make(
      TableFile file, PointName point, ImportWishes wishes, ZoneId nurserys, Instant latest)
      throws IOException {
    List<String> questions = new ArrayList<>();
    Columns columns = new TableGuess(wishes, questions).columns(file, point);
    NumberEvidence numbers = new NumberEvidence();
    TimeEvidence times = new TimeEvidence();
    gather(file, columns, numbers, times);
    ZoneId zone = zone(wishes, nurserys);
    Map<Integer, Instant> starts = new HashMap<>();
    wishes.assumedStarts.forEach(
        (stretch, text) -> starts.put(stretch, TimeOption.parse("--assume-start", text, zone)));
    return new ImportPlan(
        file,
        point,
        columns,
        numbers(wishes, numbers, questions),
        dates(wishes, times, questions),
        times.words(),
        times.needsZone(),
        zone,
        compensated(wishes, columns, questions),
        TimeOption.parse("--not-before", wishes.notBefore, ZoneOffset.UTC),
        starts,
        wishes.allowFuture ? Instant.parse("2099-12-31T00:00:00Z") : latest,
        questions);
  }

  private static void gather(
      TableFile file, Columns columns, NumberEvidence numbers, TimeEvidence times)
      throws IOException {
    file.forEach(
        columns.headingLine() + 1,
        (number, line) -> {
          List<String> fields = feedwitness.app.table.Fields.of(line, columns.separator());
          if (fields.size() > columns.conductivity()) {
            numbers.add(fields.get(columns.conductivity()));
          }
          columns
              .temperature()
              .ifPresent(
                  at -> {
                    if (at < fields.size()) {
                      numbers.add(fields.get(at));
                    }
                  });
          if (fields.size() > Math.max(columns.time(), columns.timeOfDay().orElse(0))) {
            times.add(columns.timeText(fields));
          }
        });
  }

  private static NumberStyle numbers(
      ImportWishes wishes, NumberEvidence evidence, List<String> questions) {
    if (wishes.decimal != null) {
      return wishes.decimal == ImportWishes.Decimal.COMMA ? NumberStyle.COMMA : NumberStyle.POINT;
    }
    Optional<NumberStyle> found = evidence.style();
    if (found.isEmpty()) {
      questions.add(
          "How are numbers written? %s. Say --decimal point or --decimal comma."
              .formatted(evidence.doubt()));
    }
    return found.orElse(NumberStyle.POINT);
  }

  private static DateOrder dates(
      ImportWishes wishes, TimeEvidence evidence, List<String> questions) {
    if (wishes.dates != null) {
      return switch (wishes.dates) {
        case "day-first" -> DateOrder.DAY_FIRST;
        case "month-first" -> DateOrder.MONTH_FIRST;
        default ->
            throw new IllegalArgumentException(
                "--dates '%s' is neither day-first nor month-first".formatted(wishes.dates));
      };
    }
    Optional<DateOrder> found = evidence.order();
    if (found.isEmpty()) {
      questions.add(
          "How are dates written? %s. Say --dates day-first or --dates month-first."
              .formatted(evidence.doubt()));
    }
    return found.orElse(DateOrder.DAY_FIRST);
  }

  private static Compensated compensated(
      ImportWishes wishes, Columns columns, List<String> questions) {
    if (wishes.compensated != null) {
      return wishes.compensated == ImportWishes.YesNo.YES
          ? Compensated.TO_25
          : Compensated.NOT_AT_ALL;
    }
    int at = columns.conductivity();
    if (at < columns.heading().size() && Heading.saysAt25(columns.heading().get(at))) {
      return Compensated.TO_25;
    }
    questions.add(
        "Had the instrument already referred its conductivity to 25 °C? Say --compensated yes or --compensated no.");
    return Compensated.NOT_AT_ALL;
  }

  private static ZoneId zone(ImportWishes wishes, ZoneId nurserys) {
    try {
      return wishes.zone == null ? nurserys : ZoneId.of(wishes.zone);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "--zone '%s' is no time zone such as Europe/London or UTC".formatted(wishes.zone), e);
    }
  }
}
