package feedwitness.app;

import feedwitness.solution.Composition;
import feedwitness.solution.ConductivityModel;
import feedwitness.solution.ConductivityOutcome;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** The columns of a table of compositions, and what its rows mean. Reads text, opens nothing. */
final class CompositionColumns {
  static final String TEMPERATURE = "temperature_C";
  static final String PH = "pH";
  static final String UREA = "urea";

  /** Copied to the output, otherwise left alone. */
  private static final Set<String> REMARKS = Set.of("name", "note");

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?");

  private final Map<String, Integer> places = new HashMap<>();
  private final int count;
  private final List<String> problems = new ArrayList<>();

  /** Reads a header; {@link #problems()} says what is wrong with it. */
  CompositionColumns(List<String> header) {
    count = header.size();
    for (int i = 0; i < count; i++) {
      String name = header.get(i).strip();
      Optional<String> fault = fault(name);
      if (fault.isPresent()) {
        problems.add("column %d: %s".formatted(i + 1, fault.get()));
      } else if (places.putIfAbsent(name, i) != null) {
        problems.add("column %d: %s stands there twice; keep one".formatted(i + 1, name));
      }
    }
    if (problems.isEmpty() && !places.containsKey(TEMPERATURE)) {
      problems.add("no column " + TEMPERATURE + "; add the temperature of each solution in °C");
    }
  }

  private static Optional<String> fault(String name) {
    if (name.equals(TEMPERATURE) || name.equals(PH) || name.equals(UREA)) {
      return Optional.empty();
    }
    if (REMARKS.contains(name)) {
      return Optional.empty();
    }
    for (Ion ion : Ion.values()) {
      if (ion.symbol().equals(name)) {
        return Optional.empty();
      }
    }
    return Optional.of(
        "'%s' is not known; columns are %s, and remarks in name or note"
            .formatted(name, String.join(",", known())));
  }

  /** Names of the columns with a meaning. */
  static List<String> known() {
    List<String> names = new ArrayList<>();
    for (Ion ion : Ion.values()) {
      names.add(ion.symbol());
    }
    names.addAll(List.of(UREA, TEMPERATURE, PH));
    return List.copyOf(names);
  }

  /** What is wrong with the header; empty if it can be used. */
  List<String> problems() {
    return List.copyOf(problems);
  }

  /** Number of columns. */
  int count() {
    return count;
  }

  boolean hasPh() {
    return places.containsKey(PH);
  }

  int phPlace() {
    return places.getOrDefault(PH, -1);
  }

  /** One row as the model takes it, or what is wrong with it. */
  sealed interface Row {}

  /**
   * A row.
   *
   * @param pH as given; empty to close the charge balance
   */
  record Given(Composition composition, double celsius, Optional<Double> pH) implements Row {
    ConductivityOutcome predict(ConductivityModel model) {
      return pH.isPresent()
          ? model.predict(composition, celsius, pH.get())
          : model.predict(composition, celsius);
    }
  }

  /** A row that cannot be read. */
  record Faulty(String problem) implements Row {}

  Row row(List<String> cells) {
    if (cells.size() != count) {
      return new Faulty(
          "%d cells, but the header names %d columns; write empty cells as commas"
              .formatted(cells.size(), count));
    }
    Composition composition = Composition.WATER;
    double celsius = Double.NaN;
    Optional<Double> pH = Optional.empty();
    for (Map.Entry<String, Integer> column : places.entrySet()) {
      String name = column.getKey();
      String text = cells.get(column.getValue()).strip();
      if (REMARKS.contains(name) || (text.isEmpty() && !name.equals(TEMPERATURE))) {
        continue;
      }
      if (!NUMBER.matcher(text).matches()) {
        return new Faulty(notNumber(name, text));
      }
      double number = Double.parseDouble(text);
      if (name.equals(TEMPERATURE)) {
        celsius = number;
      } else if (name.equals(PH)) {
        pH = Optional.of(number);
      } else {
        composition = with(composition, name, number);
      }
    }
    return new Given(composition, celsius, pH);
  }

  private static String notNumber(String name, String text) {
    return text.isEmpty()
        ? name + " is empty; every row needs its temperature in °C"
        : "%s: '%s' is not a number; write one such as 0.012, with a point and no unit"
            .formatted(name, text);
  }

  private static Composition with(Composition composition, String name, double amount) {
    if (name.equals(UREA)) {
      return composition.with(NeutralSolute.UREA, amount);
    }
    for (Ion ion : Ion.values()) {
      if (ion.symbol().equals(name)) {
        return composition.with(ion, amount);
      }
    }
    throw new IllegalArgumentException(name + " is no column");
  }
}
