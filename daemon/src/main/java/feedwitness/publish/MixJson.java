package feedwitness.publish;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import feedwitness.feed.Fallback;
import feedwitness.feed.Fault;
import feedwitness.feed.MixOutcome;
import feedwitness.feed.MixSheet;
import feedwitness.feed.StockCheck;
import feedwitness.feed.Supplement;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A mixing sheet as JSON: the names of its records in snake case, numbers to six digits, what is
 * not known as null. Also for the command line.
 */
public final class MixJson {
  private static final MathContext SIX_DIGITS = new MathContext(6);
  private static final TypeReference<Map<String, Object>> MAP = new TypeReference<>() {};
  private static final JsonMapper MAPPER = mapper();

  private MixJson() {}

  private static JsonMapper mapper() {
    SimpleModule module = new SimpleModule();
    module.addSerializer(Double.class, new Rounded());
    module.addSerializer(double.class, new Rounded());
    module.addSerializer(Optional.class, new PerhapsNull());
    return JsonMapper.builder()
        .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
        .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
        .addModule(module)
        .build();
  }

  /** What a form came to: faults, or what it asked for. */
  public record Answer(
      List<Fault> faults,
      @Nullable MixSheet sheet,
      @Nullable Supplement supplement,
      @Nullable Fallback fallback,
      List<StockCheck> checks) {
    public Answer {
      faults = List.copyOf(faults);
      checks = List.copyOf(checks);
    }

    /** Field names as JSON has them. */
    public static Answer of(MixOutcome outcome) {
      if (outcome instanceof MixOutcome.Faulty faulty) {
        List<Fault> faults = faulty.faults().stream().map(MixJson::snake).toList();
        return new Answer(faults, null, null, null, List.of());
      }
      MixOutcome.Mixed mixed = (MixOutcome.Mixed) outcome;
      return new Answer(
          List.of(),
          mixed.sheet().orElse(null),
          mixed.supplement().orElse(null),
          mixed.fallback().orElse(null),
          mixed.checks());
    }
  }

  private static Fault snake(Fault fault) {
    return new Fault(
        fault.field().replace('-', '_'), fault.value(), fault.reason(), fault.remedy());
  }

  static byte[] bytes(Object value) {
    try {
      return MAPPER.writeValueAsBytes(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("cannot write " + value.getClass().getSimpleName(), e);
    }
  }

  /** The answer as text, for the command line. */
  public static String text(Answer answer) {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(answer);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("cannot write a mixing sheet", e);
    }
  }

  static Map<String, Object> fields(JsonNode object) {
    return MAPPER.convertValue(object, MAP);
  }

  private static final class Rounded extends JsonSerializer<Double> {
    @Override
    public void serialize(Double value, JsonGenerator to, SerializerProvider provider)
        throws IOException {
      if (Double.isFinite(value)) {
        BigDecimal plain = BigDecimal.valueOf(value).round(SIX_DIGITS).stripTrailingZeros();
        to.writeNumber(plain.scale() < 0 ? plain.setScale(0) : plain);
      } else {
        to.writeNull();
      }
    }
  }

  @SuppressWarnings("rawtypes") // that is how the library asks for a serializer of a generic type
  private static final class PerhapsNull extends JsonSerializer<Optional> {
    @Override
    public void serialize(Optional value, JsonGenerator to, SerializerProvider provider)
        throws IOException {
      if (value.isPresent()) {
        provider.defaultSerializeValue(value.get(), to);
      } else {
        to.writeNull();
      }
    }
  }
}
