package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * Holds a JSON value against a schema: as much of JSON Schema as our description uses, and an error
 * for any keyword beyond it, so that nothing is skipped unnoticed.
 */
final class SchemaChecker {
  private static final List<String> HEEDED =
      List.of(
          "$ref",
          "oneOf",
          "type",
          "enum",
          "required",
          "properties",
          "additionalProperties",
          "items",
          "minimum",
          "maximum",
          "exclusiveMinimum",
          "exclusiveMaximum",
          "maxLength",
          "pattern");
  private static final List<String> NOTES = List.of("description", "default", "format");

  private final JsonNode description;

  SchemaChecker(JsonNode description) {
    this.description = description;
  }

  /** What is wrong, with the place; empty if all is well. */
  List<String> faults(JsonNode schema, JsonNode value, String at) {
    List<String> faults = new ArrayList<>();
    schema
        .fieldNames()
        .forEachRemaining(
            keyword -> {
              if (!HEEDED.contains(keyword) && !NOTES.contains(keyword)) {
                faults.add(at + ": the checker does not know " + keyword);
              }
            });
    if (schema.has("$ref")) {
      faults.addAll(faults(resolve(schema.get("$ref").asText()), value, at));
    }
    if (schema.has("oneOf")) {
      long fitting = 0;
      for (JsonNode choice : schema.get("oneOf")) {
        fitting += faults(choice, value, at).isEmpty() ? 1 : 0;
      }
      if (fitting != 1) {
        faults.add(at + ": fits " + fitting + " choices: " + value);
      }
    }
    checkType(schema, value, at, faults);
    checkNumber(schema, value, at, faults);
    checkText(schema, value, at, faults);
    checkObject(schema, value, at, faults);
    if (value.isArray() && schema.has("items")) {
      for (int i = 0; i < value.size(); i++) {
        faults.addAll(faults(schema.get("items"), value.get(i), at + "/" + i));
      }
    }
    return faults;
  }

  JsonNode resolve(String reference) {
    JsonNode target = description.at(reference.substring(1));
    if (target.isMissingNode()) {
      throw new AssertionError(reference + " leads nowhere");
    }
    return target;
  }

  private static void checkType(JsonNode schema, JsonNode value, String at, List<String> faults) {
    if (schema.has("type")) {
      JsonNode types = schema.get("type");
      boolean fits = types.isTextual() && is(types.asText(), value);
      for (JsonNode type : types) {
        fits |= is(type.asText(), value);
      }
      if (!fits) {
        faults.add(at + ": " + value + " is no " + types);
      }
    }
    if (schema.has("enum")) {
      boolean found = false;
      for (JsonNode each : schema.get("enum")) {
        found |= each.equals(value);
      }
      if (!found) {
        faults.add(at + ": " + value + " is none of " + schema.get("enum"));
      }
    }
  }

  private static boolean is(String type, JsonNode value) {
    return switch (type) {
      case "object" -> value.isObject();
      case "array" -> value.isArray();
      case "string" -> value.isTextual();
      case "number" -> value.isNumber();
      case "integer" -> value.isIntegralNumber();
      case "boolean" -> value.isBoolean();
      case "null" -> value.isNull();
      default -> false;
    };
  }

  private static void checkNumber(JsonNode schema, JsonNode value, String at, List<String> faults) {
    double number = value.asDouble();
    if (value.isNumber()
        && ((schema.has("minimum") && number < schema.get("minimum").asDouble())
            || (schema.has("maximum") && number > schema.get("maximum").asDouble())
            || (schema.has("exclusiveMinimum")
                && number <= schema.get("exclusiveMinimum").asDouble())
            || (schema.has("exclusiveMaximum")
                && number >= schema.get("exclusiveMaximum").asDouble()))) {
      faults.add(at + ": " + value + " is outside the limits");
    }
  }

  private static void checkText(JsonNode schema, JsonNode value, String at, List<String> faults) {
    if (value.isTextual()
        && ((schema.has("maxLength") && value.asText().length() > schema.get("maxLength").asInt())
            || (schema.has("pattern")
                && !value.asText().matches(schema.get("pattern").asText())))) {
      faults.add(at + ": " + value + " has not the form asked for");
    }
  }

  private void checkObject(JsonNode schema, JsonNode value, String at, List<String> faults) {
    if (!value.isObject()) {
      return;
    }
    for (JsonNode name : schema.path("required")) {
      if (!value.has(name.asText())) {
        faults.add(at + ": " + name + " is required and not there");
      }
    }
    value
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (schema.path("properties").has(name)) {
                JsonNode property = schema.get("properties").get(name);
                faults.addAll(faults(property, value.get(name), at + "/" + name));
              } else if (schema.has("additionalProperties")) {
                faults.add(at + ": " + name + " is not in the description");
              }
            });
  }
}
