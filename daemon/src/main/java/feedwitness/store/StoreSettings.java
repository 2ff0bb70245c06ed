package feedwitness.store;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * How the store keeps.
 *
 * @param directory holds the history file and its backups; made if absent
 * @param syncEvery longest time between two forced writes, 10 ms to 60 s: what a power cut can
 *     take. Shorter wears flash cards: about 47 GB a year at 10 s, ten times that at 1 s
 * @param queueCapacity samples that may wait for the writer, 16 to 1 000 000
 * @param freeFloor octets the disk must have free for recording, from 0
 * @param keepRaw how long single samples are kept, at least a day; empty for ever. Roll-ups are
 *     kept for ever anyway
 */
public record StoreSettings(
    Path directory,
    Duration syncEvery,
    int queueCapacity,
    long freeFloor,
    Optional<Duration> keepRaw) {
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
    if (freeFloor < 0) {
      throw new IllegalArgumentException(
          "store: a floor of %d octets is below 0".formatted(freeFloor));
    }
    if (keepRaw.isPresent() && keepRaw.get().compareTo(Duration.ofDays(1)) < 0) {
      throw new IllegalArgumentException(
          "store: keeping single samples for %d h is shorter than a day"
              .formatted(keepRaw.get().toHours()));
    }
  }

  /** No floor, and single samples for ever. */
  public StoreSettings(Path directory, Duration syncEvery, int queueCapacity) {
    this(directory, syncEvery, queueCapacity, 0, Optional.empty());
  }

  /** The usual settings. */
  public static StoreSettings in(Path directory) {
    return new StoreSettings(directory, DEFAULT_SYNC, DEFAULT_QUEUE);
  }
}
