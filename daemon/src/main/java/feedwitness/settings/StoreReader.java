package feedwitness.settings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;

/** Reads {@code [store]} and {@code [clock]}. */
final class StoreReader {
  static final Set<String> STORE = Set.of("directory", "sync-every", "free-floor", "keep-raw");
  static final Set<String> CLOCK = Set.of("trust");
  static final Duration DEFAULT_SYNC = Duration.ofSeconds(10);
  static final long DEFAULT_FLOOR = 200 * SizeText.MEGA;
  static final Duration DEFAULT_KEEP = Duration.ofDays(730);
  static final String FOR_EVER = "for-ever";

  private static final long LEAST_FLOOR = 20 * SizeText.MEGA;
  private static final long MOST_FLOOR = 100_000 * SizeText.MEGA;
  private static final Duration LEAST_KEEP = Duration.ofDays(1);

  private StoreReader() {}

  /** What is read; a fault is noted with the section and its key left at its default. */
  record Storing(
      Path directory,
      Duration syncEvery,
      long freeFloor,
      Optional<Duration> keepRaw,
      ClockChoice clock) {}

  static Storing defaults(ConfigFiles files) {
    return new Storing(
        files.store(), DEFAULT_SYNC, DEFAULT_FLOOR, Optional.of(DEFAULT_KEEP), ClockChoice.ALWAYS);
  }

  static Storing read(Section root, ConfigFiles files) {
    Storing usual = defaults(files);
    Optional<Section> store = root.table("store", STORE);
    Optional<Section> clock = root.table("clock", CLOCK);
    return new Storing(
        store.flatMap(s -> directory(s, root.source().file())).orElse(usual.directory()),
        store
            .flatMap(s -> s.duration("sync-every", Duration.ofSeconds(1), Duration.ofSeconds(60)))
            .orElse(usual.syncEvery()),
        store.flatMap(StoreReader::floor).orElse(usual.freeFloor()),
        store.flatMap(StoreReader::keepRaw).orElse(usual.keepRaw()),
        clock
            .flatMap(
                c ->
                    c.parsed(
                        "trust",
                        ClockChoice::parse,
                        "write trust = \"synchronised\", or trust = \"always\" on a machine whose"
                            + " clock is right from the start"))
            .orElse(usual.clock()));
  }

  private static Optional<Long> floor(Section store) {
    return store.parsed(
        "free-floor",
        text -> {
          long octets = SizeText.parse(text);
          if (octets < LEAST_FLOOR || octets > MOST_FLOOR) {
            throw new IllegalArgumentException(
                "%s is outside %s to %s"
                    .formatted(text, SizeText.of(LEAST_FLOOR), SizeText.of(MOST_FLOOR)));
          }
          return octets;
        },
        "for example free-floor = \"%s\"".formatted(SizeText.of(DEFAULT_FLOOR)));
  }

  private static Optional<Optional<Duration>> keepRaw(Section store) {
    return store.parsed(
        "keep-raw",
        text -> {
          if (text.equals(FOR_EVER)) {
            return Optional.<Duration>empty();
          }
          Duration keep = DurationText.parse(text);
          if (keep.compareTo(LEAST_KEEP) < 0) {
            throw new IllegalArgumentException(
                "%s is shorter than %s".formatted(text, DurationText.of(LEAST_KEEP)));
          }
          return Optional.of(keep);
        },
        "for example keep-raw = \"%s\" or keep-raw = \"%s\""
            .formatted(DurationText.of(DEFAULT_KEEP), FOR_EVER));
  }

  private static Optional<Path> directory(Section store, Path file) {
    return store.parsed(
        "directory",
        text -> {
          if (text.startsWith("~")) {
            throw new IllegalArgumentException(
                "'%s' begins with ~, which only a shell understands".formatted(text));
          }
          try {
            return file.toAbsolutePath().resolveSibling(text).normalize();
          } catch (InvalidPathException e) {
            throw new IllegalArgumentException("'%s' cannot be a path".formatted(text), e);
          }
        },
        "write the whole path, for example directory = \"/var/lib/feedwitness\"");
  }
}
