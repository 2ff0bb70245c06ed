package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A feed line as written outside.
 *
 * @param told what stands and needs to be known, in one sentence; empty if nothing
 * @param expected what the line should carry at the strength of its last event
 * @param expectedPlusMinus of it, nearly certain; only where it is solved from a stock
 * @param expectedFrom where it is known from
 * @param measured what it carried
 * @param sharePercent what was delivered over what was expected
 * @param ratioExpected litres of feed one of stock should make at that strength
 * @param ratio litres of feed one of stock really makes, nearly certain within {@code
 *     ratioPlusMinus}
 * @param open the change that lasts
 * @param events the last irrigation events, oldest first
 * @param log what was found and what was done, newest first
 */
record FeedLineJson(
    String name,
    String title,
    MixerJson mixer,
    List<PartJson> parts,
    @JsonProperty("strengths_mS_cm") List<BigDecimal> strengths,
    String state,
    @JsonProperty("state_words") String stateWords,
    String told,
    @JsonProperty("normal_rests_on_events") int normalEvents,
    @JsonProperty("expected_mS_cm") @Nullable BigDecimal expected,
    @JsonProperty("expected_plus_minus_mS_cm") @Nullable BigDecimal expectedPlusMinus,
    @JsonProperty("expected_from") String expectedFrom,
    @JsonProperty("expected_from_words") String expectedFromWords,
    @JsonProperty("measured_mS_cm") @Nullable BigDecimal measured,
    @JsonProperty("share_percent") @Nullable BigDecimal sharePercent,
    @JsonProperty("share_plus_minus_percent") @Nullable BigDecimal sharePlusMinus,
    @JsonProperty("ratio_expected") @Nullable BigDecimal ratioExpected,
    @Nullable BigDecimal ratio,
    @JsonProperty("ratio_plus_minus") @Nullable BigDecimal ratioPlusMinus,
    LimitsJson limits,
    @Nullable ChangeJson open,
    List<EventJson> events,
    List<LogJson> log) {
  FeedLineJson {
    parts = List.copyOf(parts);
    strengths = List.copyOf(strengths);
    events = List.copyOf(events);
    log = List.copyOf(log);
  }

  /** All of them, and what can be logged. */
  record ListJson(
      String now,
      @JsonProperty("feed_lines") List<FeedLineJson> feedLines,
      List<ChoiceJson> changes) {
    ListJson {
      feedLines = List.copyOf(feedLines);
      changes = List.copyOf(changes);
    }
  }

  /** A change that can be logged, and whether what is normal is learnt anew by it. */
  record ChoiceJson(String change, String words, @JsonProperty("learns_anew") boolean learnsAnew) {}

  /** What brings stock into the water; {@code setting} is the ratio or the dial. */
  record MixerJson(String kind, String words, @Nullable BigDecimal setting) {}

  /** A measured part of the line, with its latest reading. */
  record PartJson(
      String role,
      String point,
      String title,
      @JsonProperty("conductivity25_mS_cm") @Nullable BigDecimal conductivity25,
      @JsonProperty("uncertainty_mS_cm") @Nullable BigDecimal uncertainty,
      @JsonProperty("temperature_C") @Nullable BigDecimal temperature,
      @Nullable String time,
      String state) {}

  /** From where a change is told. */
  record LimitsJson(
      @JsonProperty("notice_percent") BigDecimal notice,
      @JsonProperty("alarm_percent") BigDecimal alarm,
      @JsonProperty("false_alarms") String falseAlarms) {}

  /** A change that lasts. */
  record ChangeJson(
      String kind,
      String stage,
      String start,
      String detected,
      @JsonProperty("size_percent") @Nullable BigDecimal size,
      @JsonProperty("plus_minus_percent") @Nullable BigDecimal plusMinus,
      String confidence,
      boolean ambiguous,
      List<CauseJson> causes,
      List<String> tests,
      String words) {
    ChangeJson {
      causes = List.copyOf(causes);
      tests = List.copyOf(tests);
    }
  }

  /** A likely cause; {@code why} may be empty. */
  record CauseJson(String cause, String words, String why) {}

  /** An irrigation event, % off what was normal; {@code strength} counts from 0. */
  record EventJson(String start, @Nullable BigDecimal percent, int strength) {}

  /** What was found ({@code kind} of the finding) or done ({@code kind} "change"). */
  record LogJson(@Nullable String time, String kind, String stage, String words, String who) {}
}
