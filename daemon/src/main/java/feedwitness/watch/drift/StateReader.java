package feedwitness.watch.drift;

import feedwitness.quantity.Octets;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.zip.CRC32;

/** Unpacks what a {@link StateWriter} packed; refuses what is damaged or of another version. */
final class StateReader {
  private static final int CHECK = 4;
  private static final int LEAST = Long.BYTES + CHECK;
  private final ByteBuffer buffer;

  /**
   * @throws IllegalArgumentException if the octets are damaged or of another version
   */
  StateReader(Octets octets) {
    byte[] content = octets.toArray();
    if (content.length < LEAST) {
      throw damaged(content.length);
    }
    CRC32 check = new CRC32();
    check.update(content, 0, content.length - CHECK);
    buffer = ByteBuffer.wrap(content);
    if (buffer.getInt(content.length - CHECK) != (int) check.getValue()) {
      throw damaged(content.length);
    }
    buffer.limit(content.length - CHECK);
    long version = whole();
    if (version != StateWriter.VERSION) {
      throw new IllegalArgumentException(
          "drift state is of version %d, this program reads %d; what is normal is learnt anew"
              .formatted(version, StateWriter.VERSION));
    }
  }

  private static IllegalArgumentException damaged(int length) {
    return new IllegalArgumentException(
        "drift state of %d octets is damaged; what is normal is learnt anew".formatted(length));
  }

  double number() {
    need(Double.BYTES);
    return buffer.getDouble();
  }

  long whole() {
    need(Long.BYTES);
    return buffer.getLong();
  }

  /** A count from 0 to {@code most}. */
  int count(int most) {
    long value = whole();
    if (value < 0 || value > most) {
      throw damaged(buffer.capacity());
    }
    return (int) value;
  }

  <T> T choice(List<T> all) {
    return all.get(count(all.size() - 1));
  }

  boolean truth() {
    need(1);
    return buffer.get() != 0;
  }

  /**
   * All must have been read.
   *
   * @throws IllegalArgumentException if something is left
   */
  void end() {
    if (buffer.hasRemaining()) {
      throw damaged(buffer.capacity());
    }
  }

  private void need(int octets) {
    if (buffer.remaining() < octets) {
      throw new IllegalArgumentException(
          damaged(buffer.capacity()).getMessage(), new BufferUnderflowException());
    }
  }
}
