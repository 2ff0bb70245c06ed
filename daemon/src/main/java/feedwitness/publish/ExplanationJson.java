package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.measurement.Contribution;
import feedwitness.measurement.Explanation;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.UncertaintyBudget;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.Octets;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A measurement taken apart.
 *
 * @param time null if undated
 * @param basis the exact text from which, with the indication, every number follows
 * @param uncertainty expanded: twice the standard uncertainty
 * @param budget empty where there is no value at 25 °C
 */
record ExplanationJson(
    String point,
    String id,
    @Nullable String time,
    @JsonProperty("conductivity25_mS_cm") @Nullable BigDecimal conductivity25,
    @JsonProperty("conductivity_mS_cm") @Nullable BigDecimal conductivity,
    @JsonProperty("temperature_C") @Nullable BigDecimal temperature,
    @JsonProperty("uncertainty_mS_cm") @Nullable BigDecimal uncertainty,
    List<MessageJson> messages,
    List<StepJson> steps,
    List<LineJson> budget,
    List<String> flags,
    @JsonProperty("flag_words") List<String> flagWords,
    String basis) {
  ExplanationJson {
    messages = List.copyOf(messages);
    steps = List.copyOf(steps);
    budget = List.copyOf(budget);
    flags = List.copyOf(flags);
    flagWords = List.copyOf(flagWords);
  }

  static ExplanationJson of(Explanation explained) {
    Measurement m = explained.measurement();
    return new ExplanationJson(
        m.point().text(),
        m.stamp().id(),
        m.stamp().dated() ? Numbers.time(m.stamp().wall()) : null,
        Numbers.conductivity(m.conductivity25MilliSiemensPerCm()),
        Numbers.conductivity(m.conductivityMilliSiemensPerCm()),
        Numbers.temperature(m.temperatureCelsius()),
        Numbers.conductivity(2 * m.standardUncertaintyMilliSiemensPerCm()),
        explained.messages().stream().map(MessageJson::of).toList(),
        explained.steps().stream().map(s -> new StepJson(Codes.of(s.stage()), s.words())).toList(),
        explained.budget().map(LineJson::of).orElse(List.of()),
        PointMapping.codes(m.flags()),
        m.flags().list().stream().map(QualityFlag::words).toList(),
        m.basis().toText());
  }

  /** One message off the wire. */
  record MessageJson(String hex, String text) {
    static MessageJson of(Octets octets) {
      return new MessageJson(octets.toHex(), octets.toPrintable());
    }
  }

  /** One step in words. */
  record StepJson(String step, String words) {}

  /**
   * One line of the budget; contribution = value ÷ divisor × sensitivity, without its sign.
   *
   * @param share part of the squared uncertainty, 0 to 1
   * @param assumed whether the value is ours because the maker states none
   */
  record LineJson(
      String source,
      String words,
      @Nullable BigDecimal value,
      String unit,
      String distribution,
      @Nullable BigDecimal divisor,
      @Nullable BigDecimal sensitivity,
      @JsonProperty("sensitivity_unit") String sensitivityUnit,
      @JsonProperty("contribution_mS_cm") @Nullable BigDecimal contribution,
      @Nullable BigDecimal share,
      boolean assumed) {

    static List<LineJson> of(UncertaintyBudget budget) {
      double u = budget.standardUncertaintyMilliSiemensPerCm();
      return budget.contributions().stream().map(line -> of(line, u)).toList();
    }

    private static LineJson of(Contribution line, double u) {
      double part = Math.abs(line.milliSiemensPerCm());
      return new LineJson(
          Codes.of(line.source()),
          line.source().words(),
          Numbers.conductivity(line.value()),
          line.unit(),
          line.distribution().words(),
          Numbers.conductivity(line.distribution().divisor()),
          Numbers.conductivity(line.sensitivity()),
          line.sensitivityUnit(),
          Numbers.conductivity(part),
          u > 0 ? Numbers.temperature(part / u * (part / u)) : null,
          line.assumed());
    }
  }
}
