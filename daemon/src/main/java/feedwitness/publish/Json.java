package feedwitness.publish;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Writes and reads JSON. The mapper is never changed after it was built. */
final class Json {
  static final String MEDIA_TYPE = "application/json";

  private static final JsonMapper MAPPER = mapper();

  private Json() {}

  private static JsonMapper mapper() {
    JsonFactory factory =
        JsonFactory.builder()
            .streamReadConstraints(
                StreamReadConstraints.builder().maxNestingDepth(16).maxNumberLength(40).build())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();
    return JsonMapper.builder(factory)
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .build();
  }

  static byte[] bytes(Object value) {
    try {
      return MAPPER.writeValueAsBytes(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("cannot write " + value.getClass().getSimpleName(), e);
    }
  }

  static String text(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("cannot write " + value.getClass().getSimpleName(), e);
    }
  }

  /** Any JSON, for instance an answer of our own. */
  static JsonNode tree(byte[] text) throws IOException {
    return MAPPER.readTree(text);
  }

  /**
   * Reads what a service of this kind has written.
   *
   * @throws IllegalArgumentException if it is no such thing
   */
  static <T> T read(String json, Class<T> type) {
    try {
      return MAPPER.readValue(json, type);
    } catch (IOException e) {
      throw new IllegalArgumentException("the answer is no " + type.getSimpleName(), e);
    }
  }

  /**
   * Reads a body that must be one JSON object.
   *
   * @throws ProblemException status 400 naming line and column if it is none
   */
  static JsonNode object(byte[] body) {
    JsonNode node;
    try {
      node = MAPPER.readTree(body);
    } catch (JsonProcessingException e) {
      throw Problem.of(400, "the body is not JSON" + place(e) + ": " + firstLine(e)).exception();
    } catch (IOException e) {
      throw Problem.of(400, "the body is not JSON: its text is not UTF-8").exception();
    }
    if (!node.isObject()) {
      throw Problem.of(400, "the body must be one JSON object, such as {\"conductivity\": 1.5}")
          .exception();
    }
    return node;
  }

  private static String place(JsonProcessingException e) {
    JsonLocation at = e.getLocation();
    return at == null ? "" : " at line %d, column %d".formatted(at.getLineNr(), at.getColumnNr());
  }

  private static String firstLine(JsonProcessingException e) {
    return Quoted.plain(e.getOriginalMessage());
  }
}
