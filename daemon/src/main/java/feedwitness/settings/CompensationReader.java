package feedwitness.settings;

import feedwitness.site.CompensationChoice;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** How a point is referred to 25 °C. */
final class CompensationReader {
  static final double LEAST_PERCENT = 0.5;
  static final double MOST_PERCENT = 4;
  private static final String PERCENT = "percent-per-kelvin";

  private CompensationReader() {}

  static Optional<CompensationChoice> read(Section point) {
    Optional<Double> percent = point.number(PERCENT, LEAST_PERCENT, MOST_PERCENT, "%/K");
    CompensationChoice linear =
        new CompensationChoice.Linear(
            percent.orElse(CompensationChoice.Linear.FEED_PERCENT_PER_KELVIN));
    Map<String, CompensationChoice> words = new LinkedHashMap<>();
    words.put("linear", linear);
    words.put("iso7888", new CompensationChoice.Iso7888());
    words.put("kcl", new CompensationChoice.Kcl());
    words.put("none", new CompensationChoice.None());
    Optional<CompensationChoice> choice =
        ProfileReader.or(point, "compensation", linear, point.choice("compensation", words));
    if (choice.isPresent()
        && point.has(PERCENT)
        && !(choice.get() instanceof CompensationChoice.Linear)) {
      point.problem(
          PERCENT,
          "'%s' is for linear compensation, but this point has another".formatted(PERCENT),
          "leave it out or write compensation = \"linear\"");
      return Optional.empty();
    }
    return point.has(PERCENT) && percent.isEmpty() ? Optional.empty() : choice;
  }

  /** The word for a choice. */
  static String word(CompensationChoice choice) {
    if (choice instanceof CompensationChoice.Linear) {
      return "linear";
    }
    if (choice instanceof CompensationChoice.Iso7888) {
      return "iso7888";
    }
    return choice instanceof CompensationChoice.Kcl ? "kcl" : "none";
  }
}
