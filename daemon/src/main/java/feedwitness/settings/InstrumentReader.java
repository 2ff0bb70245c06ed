package feedwitness.settings;

import feedwitness.profile.InstrumentFacts;
import feedwitness.quantity.TemperatureUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The {@code [instrument]} table of a profile: what its maker states. */
final class InstrumentReader {
  private static final Set<String> KEYS =
      Set.of(
          "compensation",
          "rated-conductivity",
          "rated-temperature",
          "resolution",
          "accuracy",
          "temperature-accuracy",
          "repeatability");
  private static final Pattern NUMBER_AND_UNIT =
      Pattern.compile("(-?[0-9]{1,9}(?:\\.[0-9]{1,9})?)\\s*(\\S*)");

  private InstrumentReader() {}

  static Optional<InstrumentFacts> read(Section root) {
    root.missing("instrument", "say what the maker states, in a table [instrument]");
    return root.table("instrument", KEYS).flatMap(InstrumentReader::facts);
  }

  private static Optional<InstrumentFacts> facts(Section section) {
    section.missing("compensation", "write \"none\", or \"to-25\" if it already refers to 25 °C");
    section.missing("rated-conductivity", "for example [\"0 mS/cm\", \"20 mS/cm\"]");
    section.missing("rated-temperature", "for example [\"0 °C\", \"50 °C\"]");
    Map<String, InstrumentFacts.Compensation> words = new LinkedHashMap<>();
    words.put("none", InstrumentFacts.Compensation.NONE);
    words.put("to-25", InstrumentFacts.Compensation.TO_25);
    Optional<InstrumentFacts.Compensation> compensation = section.choice("compensation", words);
    Optional<Span> conductivity =
        span(section, "rated-conductivity", ConductivityText::parseMilliSiemensPerCm, "mS/cm");
    Optional<Span> temperature =
        span(section, "rated-temperature", InstrumentReader::celsius, "°C");
    OptionalDouble resolution =
        optional(section, "resolution", ConductivityText::parseMilliSiemensPerCm);
    OptionalDouble accuracy = optional(section, "accuracy", text -> positive(text, "%", 100));
    OptionalDouble kelvin =
        optional(section, "temperature-accuracy", text -> positive(text, "K", 50));
    OptionalDouble scatter = optional(section, "repeatability", text -> positive(text, "%", 100));
    if (compensation.isEmpty()
        || conductivity.isEmpty()
        || temperature.isEmpty()
        || resolution.isEmpty()
        || accuracy.isEmpty()
        || kelvin.isEmpty()
        || scatter.isEmpty()) {
      return Optional.empty();
    }
    return section.made(
        "rated-conductivity",
        () ->
            new InstrumentFacts(
                compensation.get(),
                conductivity.get().low(),
                conductivity.get().high(),
                temperature.get().low(),
                temperature.get().high(),
                resolution.getAsDouble(),
                accuracy.getAsDouble(),
                kelvin.getAsDouble(),
                scatter.getAsDouble()));
  }

  private record Span(double low, double high) {}

  private static Optional<Span> span(
      Section section, String key, Function<String, Double> parse, String unit) {
    Optional<List<String>> texts = section.texts(key, 2);
    if (texts.isEmpty()) {
      return Optional.empty();
    }
    Optional<Double> low = section.entry(key, texts.get().get(0), parse);
    Optional<Double> high = section.entry(key, texts.get().get(1), parse);
    if (low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    if (low.get() < high.get()) {
      return Optional.of(new Span(low.get(), high.get()));
    }
    section.problem(
        key,
        "%s: %s %s is not below %s %s"
            .formatted(key, Values.number(low.get()), unit, Values.number(high.get()), unit),
        "write the lowest value first, then the highest");
    return Optional.empty();
  }

  /** NaN if the key is not there, empty if it is wrong. */
  private static OptionalDouble optional(
      Section section, String key, ToDoubleFunction<String> parse) {
    if (!section.has(key)) {
      return OptionalDouble.of(Double.NaN);
    }
    Optional<Double> value =
        section.parsed(key, parse::applyAsDouble, "write a number above 0 and its unit");
    if (value.isPresent() && value.get() <= 0) {
      section.problem(
          key,
          "%s %s is not above 0".formatted(key, Values.number(value.get())),
          "leave the key out if it is not known");
      return OptionalDouble.empty();
    }
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  private static double positive(String text, String unit, double most) {
    Values.refuseDecimalComma(text);
    Matcher match = NUMBER_AND_UNIT.matcher(text.strip());
    if (!match.matches() || !match.group(2).equals(unit)) {
      throw new IllegalArgumentException(
          "'%s' is no number with the unit %s, such as \"2 %s\"".formatted(text, unit, unit));
    }
    double number = Double.parseDouble(match.group(1));
    if (number < 0 || number > most) {
      throw new IllegalArgumentException(
          "%s %s is outside 0 to %s %s".formatted(match.group(1), unit, Values.number(most), unit));
    }
    return number;
  }

  private static double celsius(String text) {
    Values.refuseDecimalComma(text);
    Matcher match = NUMBER_AND_UNIT.matcher(text.strip());
    Optional<TemperatureUnit> unit =
        match.matches() ? TemperatureUnit.parse(match.group(2)) : Optional.empty();
    if (unit.isEmpty()) {
      throw new IllegalArgumentException(
          "'%s' is no temperature with its unit such as 50 °C".formatted(text));
    }
    double celsius = unit.get().toCelsius(Double.parseDouble(match.group(1)));
    if (celsius < -50 || celsius > 200) {
      throw new IllegalArgumentException("'%s' is outside -50 to 200 °C".formatted(text));
    }
    return celsius;
  }
}
