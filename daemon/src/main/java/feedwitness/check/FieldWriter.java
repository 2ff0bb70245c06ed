package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Writes a record as text fields, exactly: doubles and instants round-trip. */
final class FieldWriter {
  /** Version of the layout of all records here. */
  static final int VERSION = 1;

  private final Map<String, String> fields = new LinkedHashMap<>();

  FieldWriter() {
    put("v", Integer.toString(VERSION));
  }

  FieldWriter put(String key, String text) {
    fields.put(key, text);
    return this;
  }

  FieldWriter put(String key, double number) {
    return put(key, Double.toString(number));
  }

  FieldWriter put(String key, Instant at) {
    return put(key, at.toString());
  }

  FieldWriter put(String key, Enum<?> word) {
    return put(key, word.name());
  }

  FieldWriter put(String key, Mark mark) {
    return put(key, mark.toText());
  }

  FieldWriter put(String key, CalibrationCurve curve) {
    return put(key, CurveText.write(curve));
  }

  /** Absent leaves the field out. */
  FieldWriter mark(String key, Optional<Mark> mark) {
    mark.ifPresent(it -> put(key, it));
    return this;
  }

  /** One field a line: {@code key.0}, {@code key.1}, … */
  FieldWriter lines(String key, List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      put(key + "." + i, lines.get(i));
    }
    return this;
  }

  Map<String, String> done() {
    return Map.copyOf(fields);
  }
}
