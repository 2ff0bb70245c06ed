package feedwitness.feed;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Fields typed by a person, wherever: texts, numbers, truths, lists and forms within. A getter
 * answers with a value that is right, or notes the fault and answers empty; it never throws and
 * never repairs. Keys are asked for with hyphens and may be written with underscores.
 */
final class Form {
  private static final int LONGEST = 80;

  private final Map<String, Object> fields = new HashMap<>();
  private final Map<String, String> written = new HashMap<>();
  private final Set<String> asked = new HashSet<>();
  private final String path;
  private final List<Fault> faults;

  /**
   * A form.
   *
   * @param path of it within the outermost, empty or with a point at its end
   * @param faults to add to
   */
  Form(Map<?, ?> given, String path, List<Fault> faults) {
    this.path = path;
    this.faults = faults;
    given.forEach(
        (key, value) -> {
          if (value != null && !"".equals(value)) {
            String plain = plain(String.valueOf(key));
            fields.put(plain, value);
            written.put(plain, String.valueOf(key));
          }
        });
  }

  static String plain(String key) {
    return key.replace('_', '-');
  }

  boolean has(String key) {
    asked.add(key);
    return fields.containsKey(key);
  }

  /** Whether nothing at all was filled in. */
  boolean isEmpty() {
    return fields.isEmpty();
  }

  List<String> keys() {
    return fields.keySet().stream().sorted().toList();
  }

  List<Fault> faults() {
    return faults;
  }

  void fault(String key, String reason, String remedy) {
    Object value = fields.get(key);
    String shown =
        value == null || value instanceof Map || value instanceof List ? "" : show(value);
    faults.add(new Fault(path + written.getOrDefault(key, key), clip(shown), reason, remedy));
  }

  private static String clip(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\u0085\u2028\u2029]+", " ");
    return line.length() > LONGEST ? line.substring(0, LONGEST) + "…" : line;
  }

  private static String show(Object value) {
    return value instanceof Number number
        ? new BigDecimal(number.toString()).stripTrailingZeros().toPlainString()
        : String.valueOf(value);
  }

  /** Says that a field should be there if it is not. */
  boolean missing(String key, String remedy) {
    boolean missing = !has(key);
    if (missing) {
      fault(key, "is missing", remedy);
    }
    return missing;
  }

  /** Text or number, as text. */
  Optional<String> text(String key) {
    asked.add(key);
    Object value = fields.get(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof Double number && !Double.isFinite(number)) {
      fault(key, "is no number", "write digits, with a decimal point");
      return Optional.empty();
    }
    if (value instanceof String || value instanceof Number) {
      return Optional.of(show(value).strip()).filter(text -> !text.isEmpty());
    }
    fault(key, "is no text or number", "write one value");
    return Optional.empty();
  }

  /** What a parser makes of it; its IllegalArgumentException says {@code reason; remedy}. */
  <T> Optional<T> read(String key, Function<String, T> parse) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(parse.apply(text.get()));
    } catch (IllegalArgumentException e) {
      String[] said = String.valueOf(e.getMessage()).split("; ", 2);
      fault(key, said[0], said.length > 1 ? said[1] : "mend that value");
      return Optional.empty();
    }
  }

  /** A value within limits, {@code unit} for the message. */
  Optional<Double> read(
      String key, Function<String, Double> parse, double least, double most, String unit) {
    Optional<Double> value = read(key, parse);
    if (value.isPresent() && !(value.get() >= least && value.get() <= most)) {
      String after = unit.isEmpty() ? "" : " " + unit;
      fault(
          key,
          "is outside %s to %s%s".formatted(Text.plain(least), Text.plain(most), after),
          "look for a slip of the decimal point or of the unit");
      return Optional.empty();
    }
    return value;
  }

  /** True or false; false if absent or faulty. */
  boolean flag(String key) {
    asked.add(key);
    Object value = fields.get(key);
    if (value == null || value instanceof Boolean) {
      return Boolean.TRUE.equals(value);
    }
    fault(key, "is neither true nor false", "write true or false, without quotation marks");
    return false;
  }

  /** One of some words. */
  <T> Optional<T> choice(String key, Map<String, T> words) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    T meant = words.get(plain(text.get().toLowerCase(Locale.ROOT)).replace(' ', '-'));
    if (meant == null) {
      fault(
          key,
          "is none of " + String.join(", ", words.keySet().stream().sorted().toList()),
          "write one of them");
    }
    return Optional.ofNullable(meant);
  }

  /** A form within, if it is one; a single value is left for another getter. */
  Optional<Form> table(String key) {
    return fields.get(key) instanceof Map ? form(key) : Optional.empty();
  }

  /** A form within. */
  Optional<Form> form(String key) {
    asked.add(key);
    Object value = fields.get(key);
    if (value instanceof Map<?, ?> map) {
      return Optional.of(new Form(map, path + written.get(key) + ".", faults));
    }
    if (value != null) {
      fault(key, "is a single value", "it has fields of its own");
    }
    return Optional.empty();
  }

  /** Forms in a list; their paths count from 1. */
  List<Form> forms(String key, int most) {
    List<Form> found = new ArrayList<>();
    List<?> list = list(key, most);
    for (int i = 0; i < list.size(); i++) {
      String at = "%s%s[%d]".formatted(path, written.get(key), i + 1);
      if (list.get(i) instanceof Map<?, ?> map) {
        found.add(new Form(map, at + ".", faults));
      } else {
        faults.add(new Fault(at, "", "has no fields of its own", "write it as a table"));
      }
    }
    return found;
  }

  /** Texts in a list. */
  List<String> texts(String key, int most) {
    return list(key, most).stream().map(String::valueOf).toList();
  }

  private List<?> list(String key, int most) {
    asked.add(key);
    @Nullable Object value = fields.get(key);
    if (value == null) {
      return List.of();
    }
    if (!(value instanceof List<?> list)) {
      fault(key, "is no list", "write it as a list");
      return List.of();
    }
    if (list.size() > most) {
      fault(key, "has %d entries, more than %d".formatted(list.size(), most), "leave some out");
      return List.of();
    }
    return list;
  }

  /** Notes every field that nobody asked for. Call when all were read. */
  void finish() {
    fields.keySet().stream()
        .filter(key -> !asked.contains(key))
        .sorted()
        .forEach(
            key ->
                fault(
                    key,
                    "there is no such field",
                    nearest(key)
                        .map("did you mean %s?"::formatted)
                        .orElse(
                            "known here: " + String.join(", ", asked.stream().sorted().toList()))));
  }

  private Optional<String> nearest(String key) {
    return asked.stream()
        .filter(known -> Text.alike(known, key))
        .min(Comparator.comparingInt(known -> Math.abs(known.length() - key.length())));
  }
}
