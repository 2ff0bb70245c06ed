package feedwitness.settings;

import feedwitness.quantity.PointName;
import feedwitness.site.Band;
import feedwitness.site.PointLimits;
import feedwitness.site.StrengthOf;
import java.time.DayOfWeek;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The limits of a point. */
final class LimitsReader {
  static final Set<String> KEYS =
      Set.of(
          "conductivity-low",
          "conductivity-high",
          "conductivity-deadband",
          "limits-on",
          "source",
          "temperature-low",
          "temperature-high",
          "temperature-deadband",
          "plain-water-days");
  static final double DEFAULT_DEADBAND = 0.05;
  static final double DEFAULT_DEADBAND_KELVIN = 0.5;
  private static final double COLDEST = -5;
  private static final double HOTTEST = 60;
  private static final double WIDEST_KELVIN = 10;

  private LimitsReader() {}

  /** Empty if anything is wrong, which is noted. */
  static Optional<PointLimits> read(Section point) {
    Optional<Band> conductivity = conductivity(point);
    Optional<Band> temperature = temperature(point);
    Optional<StrengthOf> of =
        ProfileReader.or(
            point, "limits-on", StrengthOf.TOTAL, point.choice("limits-on", strengthOf()));
    Optional<PointName> source =
        point.parsed("source", PointName::new, "write the name of a point, such as source");
    Optional<Set<DayOfWeek>> days =
        ProfileReader.or(
            point,
            "plain-water-days",
            Set.of(),
            point.parsed(
                "plain-water-days",
                LimitsReader::days,
                "write days of the week with commas between: \"wednesday, sunday\""));
    if (conductivity.isEmpty()
        || temperature.isEmpty()
        || of.isEmpty()
        || days.isEmpty()
        || point.has("source") != source.isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        new PointLimits(conductivity.get(), of.get(), source, temperature.get(), days.get()));
  }

  static Map<String, StrengthOf> strengthOf() {
    Map<String, StrengthOf> words = new LinkedHashMap<>();
    words.put("total", StrengthOf.TOTAL);
    words.put("added", StrengthOf.ADDED);
    return words;
  }

  /** A conductivity with its unit, above 0. */
  static Optional<Double> positive(Section section, String key, String example) {
    return section.parsed(
        key,
        text -> {
          double value = ConductivityText.parseMilliSiemensPerCm(text);
          if (!(value > 0)) {
            throw new IllegalArgumentException("'%s' is not above 0".formatted(text));
          }
          return value;
        },
        "for example %s = \"%s\"".formatted(key, example));
  }

  private static Optional<Band> conductivity(Section point) {
    Optional<Double> low = positive(point, "conductivity-low", "1.30 mS/cm");
    Optional<Double> high = positive(point, "conductivity-high", "1.70 mS/cm");
    Optional<Double> deadband =
        ProfileReader.or(
            point,
            "conductivity-deadband",
            DEFAULT_DEADBAND,
            positive(point, "conductivity-deadband", "0.05 mS/cm"));
    if (point.has("conductivity-low") != low.isPresent()
        || point.has("conductivity-high") != high.isPresent()
        || deadband.isEmpty()) {
      return Optional.empty();
    }
    boolean right = true;
    for (String key : new String[] {"conductivity-low", "conductivity-high"}) {
      Optional<Double> limit = key.endsWith("low") ? low : high;
      if (limit.isPresent() && limit.get() <= deadband.get()) {
        right = false;
        point.problem(
            key,
            "%s %s mS/cm is not above its deadband %s mS/cm, so nothing would ever clear the alarm"
                .formatted(key, Values.number(limit.get()), Values.number(deadband.get())),
            "write a smaller conductivity-deadband, or another limit");
      }
    }
    return right
        ? band(point, "conductivity", low, high, deadband.get(), "mS/cm")
        : Optional.empty();
  }

  private static Optional<Band> temperature(Section point) {
    Optional<Double> low = point.number("temperature-low", COLDEST, HOTTEST, "°C");
    Optional<Double> high = point.number("temperature-high", COLDEST, HOTTEST, "°C");
    Optional<Double> deadband =
        ProfileReader.or(
            point,
            "temperature-deadband",
            DEFAULT_DEADBAND_KELVIN,
            point.number("temperature-deadband", 0, WIDEST_KELVIN, "K"));
    if (point.has("temperature-low") != low.isPresent()
        || point.has("temperature-high") != high.isPresent()
        || deadband.isEmpty()) {
      return Optional.empty();
    }
    return band(point, "temperature", low, high, deadband.get(), "°C");
  }

  private static Optional<Band> band(
      Section point,
      String what,
      Optional<Double> low,
      Optional<Double> high,
      double deadband,
      String unit) {
    if (low.isPresent() && high.isPresent() && low.get() + deadband >= high.get()) {
      point.problem(
          what + "-high",
          "%s-high %s %s is not more than the deadband %s above %s-low %s %s"
              .formatted(
                  what,
                  Values.number(high.get()),
                  unit,
                  Values.number(deadband),
                  what,
                  Values.number(low.get()),
                  unit),
          "move the limits apart or write a smaller %s-deadband".formatted(what));
      return Optional.empty();
    }
    return Optional.of(new Band(low.orElse(Double.NaN), high.orElse(Double.NaN), deadband));
  }

  private static Set<DayOfWeek> days(String text) {
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    for (String word : text.split(",", -1)) {
      try {
        days.add(DayOfWeek.valueOf(word.strip().toUpperCase(Locale.ROOT)));
      } catch (IllegalArgumentException e) {
        throw new IllegalArgumentException(
            "'%s' is no day of the week".formatted(Values.clip(word.strip())), e);
      }
    }
    return days;
  }
}
