package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads the fields of a request's JSON object one by one and gathers everything that is wrong, so
 * that a person mends it in one go. After the last field call {@link #finish()}: it throws if
 * anything was wrong; until then a faulty field reads as its fallback.
 */
final class BodyFields {
  private final JsonNode object;
  private final List<Problem.FieldError> errors = new ArrayList<>();
  private final Set<String> known = new HashSet<>();

  BodyFields(JsonNode object) {
    this.object = object;
  }

  /** Text that must be there, 1 to {@code longest} characters; empty text if faulty. */
  String text(String name, int longest) {
    String text = optionalText(name, longest);
    if (text.isBlank() && !faulty(name)) {
      fault(name, name + " is missing; give a text of 1 to " + longest + " characters");
    }
    return text;
  }

  /** Text of up to {@code longest} characters; empty if absent, null or faulty. */
  String optionalText(String name, int longest) {
    JsonNode node = get(name);
    if (node == null) {
      return "";
    }
    if (!node.isTextual()) {
      fault(name, "%s must be a text in quotes, not %s".formatted(name, shown(node)));
      return "";
    }
    String text = node.textValue().strip();
    if (text.length() > longest) {
      fault(name, "%s has %d characters; the limit is %d".formatted(name, text.length(), longest));
      return "";
    }
    if (text.chars().anyMatch(Character::isISOControl)) {
      fault(name, name + " must not hold control characters such as line ends");
      return "";
    }
    return text;
  }

  /** Text of one or more lines that must be there; empty text if faulty. */
  String lines(String name, int longest) {
    String text = optionalLines(name, longest);
    if (text.isBlank() && !faulty(name)) {
      fault(name, name + " is missing; give a text of 1 to " + longest + " characters");
    }
    return text;
  }

  /** Text of any lines up to {@code longest} characters; empty if absent, null or faulty. */
  String optionalLines(String name, int longest) {
    JsonNode node = get(name);
    if (node == null) {
      return "";
    }
    if (!node.isTextual()) {
      fault(name, "%s must be a text in quotes, not %s".formatted(name, shown(node)));
      return "";
    }
    String text = node.textValue().replace("\r\n", "\n").strip();
    if (text.length() > longest) {
      fault(name, "%s has %d characters; the limit is %d".formatted(name, text.length(), longest));
      return "";
    }
    if (text.chars().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\t')) {
      fault(name, name + " must not hold control characters");
      return "";
    }
    return text;
  }

  /** A JSON object; null if absent or faulty. */
  @Nullable JsonNode optionalObject(String name) {
    JsonNode node = get(name);
    if (node == null || node.isObject()) {
      return node;
    }
    fault(name, name + " must be an object in braces");
    return null;
  }

  /** A number that must be there; NaN if faulty. */
  double number(String name) {
    if (get(name) == null) {
      fault(name, name + " is missing; give a number");
      return Double.NaN;
    }
    return optionalNumber(name);
  }

  /** A finite number; NaN if absent, null or faulty. */
  double optionalNumber(String name) {
    JsonNode node = get(name);
    if (node == null) {
      return Double.NaN;
    }
    if (!node.isNumber() || !Double.isFinite(node.doubleValue())) {
      fault(name, "%s must be a number such as 1.5, not %s".formatted(name, shown(node)));
      return Double.NaN;
    }
    return node.doubleValue();
  }

  /** A whole number from {@code min} to {@code max}; {@code fallback} if absent or faulty. */
  int whole(String name, int min, int max, int fallback) {
    JsonNode node = get(name);
    if (node == null) {
      return fallback;
    }
    if (node.isInt() && node.intValue() >= min && node.intValue() <= max) {
      return node.intValue();
    }
    fault(
        name,
        "%s must be a whole number from %d to %d, not %s".formatted(name, min, max, shown(node)));
    return fallback;
  }

  /** A whole number from {@code min} to {@code max} that must be there; {@code min} if faulty. */
  int neededWhole(String name, int min, int max) {
    if (get(name) == null) {
      fault(name, "%s is missing; give a whole number from %d to %d".formatted(name, min, max));
      return min;
    }
    return whole(name, min, max, min);
  }

  /** True or false; {@code fallback} if absent or faulty. */
  boolean flag(String name, boolean fallback) {
    JsonNode node = get(name);
    if (node == null || node.isBoolean()) {
      return node == null ? fallback : node.booleanValue();
    }
    fault(name, "%s must be true or false, not %s".formatted(name, shown(node)));
    return fallback;
  }

  /** A list that must be there, 1 to {@code most} entries; empty if faulty. */
  List<JsonNode> list(String name, int most) {
    JsonNode node = get(name);
    if (node == null || !node.isArray() || node.isEmpty() || node.size() > most) {
      fault(name, "%s must be a list of 1 to %d entries".formatted(name, most));
      return List.of();
    }
    List<JsonNode> entries = new ArrayList<>(node.size());
    node.forEach(entries::add);
    return entries;
  }

  /** One of a few words that must be there; empty if faulty. */
  <T> Optional<T> oneOf(String name, Map<String, T> choices) {
    JsonNode node = get(name);
    T choice = node == null || !node.isTextual() ? null : choices.get(node.textValue());
    if (choice == null) {
      fault(
          name,
          "%s %s; give one of %s"
              .formatted(
                  name,
                  node == null ? "is missing" : "cannot be " + shown(node),
                  String.join(", ", choices.keySet())));
    }
    return Optional.ofNullable(choice);
  }

  /** Says that a field, though well formed, cannot be used. */
  void fault(String name, String message) {
    errors.add(new Problem.FieldError(name, message));
  }

  private boolean faulty(String name) {
    return errors.stream().anyMatch(error -> error.field().equals(name));
  }

  /**
   * Ends the reading.
   *
   * @throws ProblemException status 422 with every field at fault, unknown ones too
   */
  void finish() {
    object
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                fault(Quoted.plain(name), "there is no field %s here".formatted(Quoted.of(name)));
              }
            });
    if (!errors.isEmpty()) {
      throw new Problem(422, errors.get(0).message(), errors).exception();
    }
  }

  private @Nullable JsonNode get(String name) {
    known.add(name);
    JsonNode node = object.get(name);
    return node == null || node.isNull() ? null : node;
  }

  private static String shown(JsonNode node) {
    return node.isContainerNode() ? "a list or an object" : Quoted.of(node.asText());
  }
}
