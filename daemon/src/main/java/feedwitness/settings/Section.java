package feedwitness.settings;

import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/**
 * One TOML table and what is asked of it. A getter answers with a value that is right, or notes the
 * problem and answers empty; it never throws and never repairs.
 */
final class Section {
  private final Source source;
  private final TomlTable table;
  private final Spot own;
  private final String what;

  /**
   * A table; its unknown keys are noted at once.
   *
   * @param own where it begins
   * @param what it is called in messages, for example {@code point 'tank'}; may be empty
   * @param known all keys it may have
   */
  Section(Source source, TomlTable table, Spot own, String what, Set<String> known) {
    this.source = source;
    this.table = table;
    this.own = own;
    this.what = what;
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        problem(key, "key '%s' is unknown".formatted(Values.clip(key)), remedyFor(key, known));
      }
    }
  }

  private static String remedyFor(String key, Collection<String> known) {
    return Words.nearest(key, known)
        .map("did you mean '%s'?"::formatted)
        .orElseGet(() -> "known here: " + String.join(", ", known.stream().sorted().toList()));
  }

  Source source() {
    return source;
  }

  /** All of it as parsed, for forms that another room reads. */
  TomlTable parsed() {
    return table;
  }

  boolean has(String key) {
    return table.contains(List.of(key));
  }

  /** Texts, numbers and truths as they stand, in order of place. */
  Map<String, Object> entries() {
    Map<String, Object> entries = new LinkedHashMap<>();
    table.keySet().stream()
        .sorted(Comparator.comparing(this::spot))
        .forEach(key -> entries.put(key, Objects.requireNonNull(raw(key))));
    return entries;
  }

  /** Where a key stands; where the table begins if the key is not there. */
  Spot spot(String key) {
    return has(key) ? Spot.of(table.inputPositionOf(List.of(key))) : own;
  }

  void problem(String key, String message, String remedy) {
    source.add(spot(key), key, what.isEmpty() ? message : what + ": " + message, remedy);
  }

  /** Notes that a key should be there, if the whole file could be read. */
  void missing(String key, String remedy) {
    if (source.whole() && !has(key)) {
      problem(key, "'%s' is missing".formatted(key), remedy);
    }
  }

  /** Text that is not blank. */
  Optional<String> text(String key) {
    Optional<String> text = value(key, String.class, "text in quotation marks");
    if (text.isPresent() && text.get().isBlank()) {
      problem(key, "'%s' is empty".formatted(key), "write something or leave the key out");
      return Optional.empty();
    }
    return text;
  }

  /**
   * Text read further by something that throws IllegalArgumentException saying why not, and after a
   * semicolon what to do about it if it knows better than {@code remedy}.
   */
  <T> Optional<T> parsed(String key, Function<String, T> parse, String remedy) {
    return text(key).flatMap(text -> read(key, text, parse, remedy));
  }

  /**
   * As {@link #parsed}, of text that may be blank: a line end can be all an instrument waits for.
   */
  <T> Optional<T> parsedRaw(String key, Function<String, T> parse, String remedy) {
    return value(key, String.class, "text in quotation marks")
        .flatMap(text -> read(key, text, parse, remedy));
  }

  /** One text of a list, read further. */
  <T> Optional<T> entry(String key, String text, Function<String, T> parse) {
    return read(key, text, parse, "write each value in quotation marks, number and unit");
  }

  private <T> Optional<T> read(String key, String text, Function<String, T> parse, String remedy) {
    try {
      return Optional.of(parse.apply(text));
    } catch (IllegalArgumentException e) {
      String[] said = String.valueOf(e.getMessage()).split("; ", 2);
      problem(
          key, key + " " + Values.line(said[0]), said.length > 1 ? Values.line(said[1]) : remedy);
      return Optional.empty();
    }
  }

  /** What a constructor makes, unless it throws IllegalArgumentException: message; remedy. */
  <T> Optional<T> made(String key, Supplier<T> constructor) {
    try {
      return Optional.of(constructor.get());
    } catch (IllegalArgumentException e) {
      String[] said = String.valueOf(e.getMessage()).split("; ", 2);
      problem(
          key, Values.line(said[0]), said.length > 1 ? Values.line(said[1]) : "mend that value");
      return Optional.empty();
    }
  }

  /** One of some words. */
  <T> Optional<T> choice(String key, Map<String, T> words) {
    return text(key)
        .flatMap(
            text -> {
              T meant = words.get(text);
              if (meant == null) {
                problem(
                    key,
                    "%s '%s' is not one of %s"
                        .formatted(key, Values.clip(text), String.join(", ", words.keySet())),
                    Words.nearest(text, words.keySet())
                        .map("did you mean '%s'?"::formatted)
                        .orElse("write one of them"));
              }
              return Optional.ofNullable(meant);
            });
  }

  /** A duration text from least to most. */
  Optional<Duration> duration(String key, Duration least, Duration most) {
    String range = "%s to %s".formatted(DurationText.of(least), DurationText.of(most));
    return this.<Duration>parsed(
            key, DurationText::parse, "write a number and its unit, from " + range)
        .filter(
            duration -> {
              boolean in = duration.compareTo(least) >= 0 && duration.compareTo(most) <= 0;
              if (!in) {
                problem(
                    key,
                    "%s %s is outside %s".formatted(key, DurationText.of(duration), range),
                    "choose a duration in that range");
              }
              return in;
            });
  }

  /** A number, whole or decimal, from least to most, in {@code unit} (may be empty). */
  Optional<Double> number(String key, double least, double most, String unit) {
    Object raw = raw(key);
    if (raw == null) {
      return Optional.empty();
    }
    if (!(raw instanceof Long || raw instanceof Double)) {
      wrongType(key, raw, "a number");
      return Optional.empty();
    }
    double number = ((Number) raw).doubleValue();
    if (number >= least && number <= most) {
      return Optional.of(number);
    }
    outside(key, Values.number(number), Values.number(least), Values.number(most), unit);
    return Optional.empty();
  }

  /** A whole number from least to most. */
  Optional<Integer> whole(String key, int least, int most) {
    Optional<Long> number = value(key, Long.class, "a whole number");
    if (number.isPresent() && (number.get() < least || number.get() > most)) {
      outside(key, Long.toString(number.get()), Integer.toString(least), "" + most, "");
      return Optional.empty();
    }
    return number.map(Long::intValue);
  }

  /** A list of exactly {@code count} texts. */
  Optional<List<String>> texts(String key, int count) {
    Optional<TomlArray> array = value(key, TomlArray.class, "a list of %d texts".formatted(count));
    if (array.isEmpty()) {
      return Optional.empty();
    }
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < array.get().size(); i++) {
      if (array.get().get(i) instanceof String text) {
        texts.add(text);
      }
    }
    if (texts.size() != count || array.get().size() != count) {
      problem(
          key,
          "%s has %d entries, %d of them text".formatted(key, array.get().size(), texts.size()),
          "write a list of %d texts in quotation marks, each with its unit".formatted(count));
      return Optional.empty();
    }
    return Optional.of(texts);
  }

  /** A list of {@code least} to {@code most} texts. */
  Optional<List<String>> texts(String key, int least, int most) {
    Optional<TomlArray> array = value(key, TomlArray.class, "a list of texts");
    if (array.isEmpty()) {
      return Optional.empty();
    }
    int size = array.get().size();
    List<String> texts =
        array.get().toList().stream()
            .filter(String.class::isInstance)
            .map(String.class::cast)
            .toList();
    if (texts.size() == size && size >= least && size <= most) {
      return Optional.of(texts);
    }
    problem(
        key,
        "%s has %d entries, %d of them text".formatted(key, size, texts.size()),
        "write a list of %d to %d texts in quotation marks".formatted(least, most));
    return Optional.empty();
  }

  /** A list of up to {@code most} texts, each read further as by {@link #parsed}. */
  <T> List<T> list(String key, int most, Function<String, T> parse, String remedy) {
    Optional<TomlArray> array = value(key, TomlArray.class, "a list of texts");
    List<T> read = new ArrayList<>();
    for (int i = 0; i < array.map(TomlArray::size).orElse(0); i++) {
      if (array.get().get(i) instanceof String text && i < most) {
        read(key, text, parse, remedy).ifPresent(read::add);
      } else {
        problem(
            key,
            "entry %d of %s is no text, or more than the %d that fit".formatted(i + 1, key, most),
            remedy);
        return read;
      }
    }
    return read;
  }

  /** A day, written with or without quotation marks: {@code 2026-05-01}. */
  Optional<LocalDate> date(String key) {
    return raw(key) instanceof LocalDate day
        ? Optional.of(day)
        : parsed(key, Section::day, "write year, month and day, for example 2026-05-01");
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text.strip());
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("'%s' is no day".formatted(Values.clip(text)), e);
    }
  }

  private void outside(String key, String value, String least, String most, String unit) {
    String after = unit.isEmpty() ? "" : " " + unit;
    problem(
        key,
        "%s %s%s is outside %s to %s%s".formatted(key, value, after, least, most, after),
        "choose a number in that range");
  }

  Optional<Boolean> flag(String key) {
    return value(key, Boolean.class, "true or false");
  }

  /** A table of its own. */
  Optional<Section> table(String key, Set<String> known) {
    return value(key, TomlTable.class, "a table, [%s]".formatted(key))
        .map(inner -> new Section(source, inner, spot(key), name(key), known));
  }

  /** Tables written {@code [[key]]}. */
  List<Section> tables(String key, Set<String> known) {
    Object raw = raw(key);
    if (raw == null) {
      return List.of();
    }
    List<Section> found = new ArrayList<>();
    if (raw instanceof TomlArray array) {
      for (int i = 0; i < array.size(); i++) {
        if (array.get(i) instanceof TomlTable inner) {
          found.add(
              new Section(
                  source, inner, Spot.of(array.inputPositionOf(i)), label(key, inner, i), known));
        }
      }
      if (found.size() == array.size()) {
        return found;
      }
    }
    problem(
        key,
        "'%s' is not a list of tables".formatted(key),
        "write [[%s]], with two brackets on both sides, before the keys of each".formatted(key));
    return found;
  }

  private String name(String key) {
    return what.isEmpty() ? "[%s]".formatted(key) : what + " [%s]".formatted(key);
  }

  private String label(String key, TomlTable inner, int index) {
    return inner.get(List.of("name")) instanceof String name
        ? "%s '%s'".formatted(key, Values.clip(name))
        : "%s number %d".formatted(key, index + 1);
  }

  private @Nullable Object raw(String key) {
    return table.get(List.of(key));
  }

  private <T> Optional<T> value(String key, Class<T> type, String expected) {
    Object raw = raw(key);
    if (raw == null) {
      return Optional.empty();
    }
    if (!type.isInstance(raw)) {
      wrongType(key, raw, expected);
      return Optional.empty();
    }
    return Optional.of(type.cast(raw));
  }

  private void wrongType(String key, Object raw, String expected) {
    problem(
        key,
        "%s = %s is %s, not %s".formatted(key, Values.shown(raw), Values.kind(raw), expected),
        Values.remedy(key, raw, expected));
  }
}
