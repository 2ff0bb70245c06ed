package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.engine.LiveView;
import feedwitness.ledger.DurableMark;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** How the service is. */
record HealthJson(
    String status,
    String version,
    int boot,
    String started,
    String now,
    @JsonProperty("durable_through") Durable durableThrough,
    List<String> trouble,
    @JsonProperty("samples_dropped") long samplesDropped) {
  HealthJson {
    trouble = List.copyOf(trouble);
  }

  /** {@code more}: trouble of the way in, besides the engine's. */
  static HealthJson of(LiveView.Health health, List<String> more, Instant now) {
    List<String> trouble = Stream.concat(health.trouble().stream(), more.stream()).toList();
    return new HealthJson(
        trouble.isEmpty() ? "ok" : "trouble",
        health.version(),
        health.boot(),
        Numbers.time(health.startedAt()),
        Numbers.time(now),
        Durable.of(health.durableThrough()),
        trouble,
        health.samplesDropped());
  }

  /**
   * What is safe on disk.
   *
   * @param syncedAt null before the first time
   */
  record Durable(int boot, long sequence, @JsonProperty("synced_at") @Nullable String syncedAt) {
    static Durable of(DurableMark mark) {
      return new Durable(
          mark.boot(),
          mark.sequence(),
          mark.syncedAt().isAfter(Instant.EPOCH) ? Numbers.time(mark.syncedAt()) : null);
    }
  }
}
