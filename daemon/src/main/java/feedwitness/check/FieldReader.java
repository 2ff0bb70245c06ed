package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Reads what {@link FieldWriter} wrote; whatever is wrong is an IllegalArgumentException. */
final class FieldReader {
  private final String kind;
  private final Map<String, String> fields;

  FieldReader(String kind, Map<String, String> fields) {
    this.kind = kind;
    this.fields = Map.copyOf(fields);
    int version = (int) number("v");
    if (version > FieldWriter.VERSION) {
      throw damaged(
          "version %d is newer than this program's %d".formatted(version, FieldWriter.VERSION));
    }
  }

  String text(String key) {
    String text = fields.get(key);
    if (text == null) {
      throw damaged("'%s' is missing".formatted(key));
    }
    return text;
  }

  double number(String key) {
    return read(key, Double::parseDouble);
  }

  int whole(String key) {
    return read(key, Integer::parseInt);
  }

  Instant instant(String key) {
    return read(key, Instant::parse);
  }

  <E extends Enum<E>> E word(String key, Class<E> type) {
    return read(key, text -> Enum.valueOf(type, text));
  }

  Mark mark(String key) {
    return read(key, Mark::parse);
  }

  Optional<Mark> maybeMark(String key) {
    return fields.containsKey(key) ? Optional.of(mark(key)) : Optional.empty();
  }

  CalibrationCurve curve(String key) {
    return read(key, CurveText::read);
  }

  /** As {@link FieldWriter#lines} wrote them. */
  List<String> lines(String key) {
    List<String> lines = new ArrayList<>();
    while (fields.containsKey(key + "." + lines.size())) {
      lines.add(text(key + "." + lines.size()));
    }
    return lines;
  }

  <T> T read(String key, Function<String, T> parse) {
    String text = text(key);
    try {
      return parse.apply(text);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new IllegalArgumentException(
          "a kept record of kind %s cannot be read: %s '%s'".formatted(kind, key, text), e);
    }
  }

  private IllegalArgumentException damaged(String why) {
    return new IllegalArgumentException(
        "a kept record of kind %s cannot be read: %s".formatted(kind, why));
  }
}
