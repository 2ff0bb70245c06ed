package feedwitness.store;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Reads what {@link ByteSink} wrote; never past the end, never more than announced. */
final class ByteSource {
  private final byte[] buffer;
  private final int end;
  private int next;

  ByteSource(byte[] buffer) {
    this(buffer, 0, buffer.length);
  }

  ByteSource(byte[] buffer, int from, int end) {
    this.buffer = buffer;
    this.next = from;
    this.end = end;
  }

  int octet() throws DamagedException {
    if (next >= end) {
      throw new DamagedException("ends too early, at octet " + next);
    }
    return buffer[next++] & 0xff;
  }

  long unsigned() throws DamagedException {
    long value = 0;
    for (int shift = 0; shift < 70; shift += 7) {
      int octet = octet();
      value |= (long) (octet & 0x7f) << shift;
      if (octet < 0x80) {
        return value;
      }
    }
    throw new DamagedException("number without end at octet " + next);
  }

  long signed() throws DamagedException {
    long folded = unsigned();
    return (folded >>> 1) ^ -(folded & 1);
  }

  long fixed64() throws DamagedException {
    long value = 0;
    for (int i = 0; i < 8; i++) {
      value = (value << 8) | octet();
    }
    return value;
  }

  /** A count that cannot be larger than {@code max} if the octets are sound. */
  int count(long max) throws DamagedException {
    long value = unsigned();
    if (value < 0 || value > max) {
      throw new DamagedException("count %d is above %d".formatted(value, max));
    }
    return (int) value;
  }

  /** A stretch of {@code length} octets, to be read on its own. */
  ByteSource stretch(int length) throws DamagedException {
    if (length > remaining()) {
      throw new DamagedException("%d octets announced, %d left".formatted(length, remaining()));
    }
    ByteSource part = new ByteSource(buffer, next, next + length);
    next += length;
    return part;
  }

  byte[] octets(int length) throws DamagedException {
    stretch(length);
    return Arrays.copyOfRange(buffer, next - length, next);
  }

  String text() throws DamagedException {
    return new String(octets(count(remaining())), StandardCharsets.UTF_8);
  }

  int remaining() {
    return end - next;
  }
}
