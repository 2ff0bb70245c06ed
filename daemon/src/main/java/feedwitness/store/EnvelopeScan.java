package feedwitness.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.Set;

/**
 * Goes once through a file, in little memory, and finds the envelopes in it, whatever the database
 * in it makes of them: each says what it is, how long it is, and whether it is sound.
 */
final class EnvelopeScan {
  private static final int WINDOW = 4 * 1024 * 1024;

  /** No envelope is longer. */
  private static final int OVERLAP = 1_100_000;

  private final FileChannel channel;
  private final boolean[] wanted = new boolean[Byte.MAX_VALUE + 1];

  EnvelopeScan(FileChannel channel, Set<Envelope.Kind> kinds) {
    this.channel = channel;
    kinds.forEach(kind -> wanted[kind.format()] = true);
  }

  /** Takes an envelope that is whole and sound. */
  interface Found {
    void at(long position, byte[] packed);
  }

  void run(Found found) throws IOException {
    byte[] window = new byte[WINDOW + OVERLAP];
    int next = 0;
    for (long base = 0; base < channel.size(); base += WINDOW) {
      int end = read(channel, base, window);
      int last = Math.min(end, WINDOW);
      int at = next;
      while (at < last) {
        int length = window[at] > 0 && wanted[window[at]] ? lengthAt(window, at, end) : 0;
        if (length > 0) {
          byte[] packed = new byte[length];
          System.arraycopy(window, at, packed, 0, length);
          found.at(base + at, packed);
        }
        at += Math.max(1, length);
      }
      next = at - last;
    }
  }

  private static int lengthAt(byte[] window, int at, int end) {
    return at + 1 < end ? Envelope.lengthAt(window, at, end) : 0;
  }

  /** Reads from a position until an array is full or the file ends; how many octets that were. */
  static int read(FileChannel channel, long position, byte[] into) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(into);
    while (buffer.hasRemaining()) {
      if (channel.read(buffer, position + buffer.position()) < 0) {
        break;
      }
    }
    return buffer.position();
  }
}
