package feedwitness.watch.drift;

import feedwitness.quantity.Octets;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.zip.CRC32;

/** Packs a state into octets: a version first, a check of all at the end. Big-endian. */
final class StateWriter {
  /** Of the layout; raise it with every change. */
  static final int VERSION = 2;

  private static final int CHECK = 4;
  private ByteBuffer buffer = ByteBuffer.allocate(4096);

  StateWriter() {
    whole(VERSION);
  }

  private ByteBuffer room(int octets) {
    if (buffer.remaining() < octets) {
      buffer.flip();
      buffer = ByteBuffer.allocate(2 * buffer.capacity() + octets).put(buffer);
    }
    return buffer;
  }

  StateWriter number(double value) {
    room(Double.BYTES).putDouble(value);
    return this;
  }

  StateWriter whole(long value) {
    room(Long.BYTES).putLong(value);
    return this;
  }

  StateWriter truth(boolean value) {
    room(1).put((byte) (value ? 1 : 0));
    return this;
  }

  /** One of some values, by its place among them. */
  <T> StateWriter choice(T value, List<T> all) {
    return whole(all.indexOf(value));
  }

  Octets octets() {
    byte[] content = new byte[buffer.position() + CHECK];
    buffer.flip();
    buffer.get(content, 0, content.length - CHECK);
    CRC32 check = new CRC32();
    check.update(content, 0, content.length - CHECK);
    ByteBuffer.wrap(content).putInt(content.length - CHECK, (int) check.getValue());
    return Octets.of(content);
  }
}
