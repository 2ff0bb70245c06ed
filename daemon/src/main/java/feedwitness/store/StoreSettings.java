package feedwitness.store;

import java.nio.file.Path;
import java.time.Duration;

/**
 * How the store keeps.
 *
 * @param directory holds the history file and its backups; made if absent
 * @param syncEvery longest time between two forced writes, 10 ms to 60 s: what a power cut can
 *     take. Shorter wears flash cards: about 47 GB a year at 10 s, ten times that at 1 s
 * @param queueCapacity samples that may wait for the writer, 16 to 1 000 000
 */
public record StoreSettings(Path directory, Duration syncEvery, int queueCapacity) {
  public static final Duration DEFAULT_SYNC = Duration.ofSeconds(10);

  /** Half an hour of four probes at 1 Hz, about 3 MB of memory. */
  public static final int DEFAULT_QUEUE = 8_192;

  public StoreSettings {
    if (syncEvery.compareTo(Duration.ofMillis(10)) < 0
        || syncEvery.compareTo(Duration.ofSeconds(60)) > 0) {
      throw new IllegalArgumentException(
          "store: forced write every %d ms is outside 10 ms to 60 s"
              .formatted(syncEvery.toMillis()));
    }
    if (queueCapacity < 16 || queueCapacity > 1_000_000) {
      throw new IllegalArgumentException(
          "store: a queue of %d samples is outside 16 to 1000000".formatted(queueCapacity));
    }
  }

  /** The usual settings. */
  public static StoreSettings in(Path directory) {
    return new StoreSettings(directory, DEFAULT_SYNC, DEFAULT_QUEUE);
  }
}
