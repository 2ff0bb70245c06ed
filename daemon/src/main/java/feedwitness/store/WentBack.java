package feedwitness.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Tells whether a database that opens without complaint has gone back to an older state of itself.
 * H2 does that where the last of what it wrote was torn by a power cut and it finds no way to what
 * it had forced before. What it no longer knows is still in the file: each sync leaves an envelope,
 * and an envelope is written only when the one before it is safe.
 */
final class WentBack {
  /** The last sync may have been under way when the power went: nobody was told it was safe. */
  private static final int UNDER_WAY = 1;

  private final NavigableSet<Top> left;

  private WentBack(NavigableSet<Top> left) {
    this.left = left;
  }

  /**
   * Looks over a file, once, before a database is opened in it: opening may write.
   *
   * @return empty if there is no file
   */
  static Optional<WentBack> look(Path file) throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    NavigableSet<Top> left = new TreeSet<>();
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      new EnvelopeScan(channel, Set.of(Envelope.Kind.HOT))
          .run((position, packed) -> top(packed).ifPresent(left::add));
    }
    return Optional.of(new WentBack(left));
  }

  private static Optional<Top> top(byte[] packed) {
    try {
      return Top.of(HotCodec.unpack(packed, key -> true, Carving.NOBODY));
    } catch (DamagedException | RuntimeException e) {
      // looked like one of ours and was not
      return Optional.empty();
    }
  }

  /**
   * In words, how far back; empty if a database knows all that had been called safe.
   *
   * @param known how far the database goes
   */
  Optional<String> words(Optional<Top> known) {
    NavigableSet<Top> unknown = known.map(top -> left.tailSet(top, false)).orElse(left);
    if (unknown.size() <= UNDER_WAY) {
      return Optional.empty();
    }
    return Optional.of(
        "it opens in a state from before the last %d times it was written to disk"
            .formatted(unknown.size()));
  }
}
