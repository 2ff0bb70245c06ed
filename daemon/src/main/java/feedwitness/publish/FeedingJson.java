package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.engine.FeedingStatus;
import feedwitness.engine.Running;
import feedwitness.site.Strength;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What runs at a point, and what could. */
record FeedingJson(
    String point,
    String title,
    String what,
    @Nullable String strength,
    @Nullable String since,
    @Nullable String by,
    String why,
    List<ChoiceJson> choices,
    @Nullable BandJson band,
    @Nullable QuestionJson question) {
  FeedingJson {
    choices = List.copyOf(choices);
  }

  /** A strength that is fed there. */
  record ChoiceJson(
      String name,
      String title,
      @JsonProperty("conductivity_mS_cm") @Nullable BigDecimal conductivity,
      String of,
      @JsonProperty("tolerance_mS_cm") @Nullable BigDecimal tolerance) {
    static ChoiceJson of(Strength strength) {
      return new ChoiceJson(
          strength.name(),
          strength.title(),
          Numbers.conductivity(strength.milliSiemensPerCm()),
          Codes.of(strength.of()),
          Numbers.conductivity(strength.tolerance()));
    }
  }

  /** A level nobody has named. */
  record QuestionJson(
      @JsonProperty("level_mS_cm") @Nullable BigDecimal level, int times, String words) {}

  /** All points. */
  record ListJson(List<FeedingJson> points) {
    ListJson {
      points = List.copyOf(points);
    }
  }

  static FeedingJson of(FeedingStatus status, double source) {
    Running running = status.running();
    return new FeedingJson(
        status.point().name().text(),
        status.point().title(),
        Codes.of(running.what()),
        running.what() == Running.What.STRENGTH ? running.strength() : null,
        running.since().map(AlarmJson::time).orElse(null),
        running.who().isEmpty() ? null : running.who(),
        status.why(),
        status.choices().stream().map(ChoiceJson::of).toList(),
        BandJson.of(status.band(), source),
        status
            .question()
            .map(
                q ->
                    new QuestionJson(
                        Numbers.conductivity(q.milliSiemensPerCm()), q.times(), q.words()))
            .orElse(null));
  }
}
