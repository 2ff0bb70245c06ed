package feedwitness.store;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Growing octets with variable-length numbers: small ones take one octet. */
final class ByteSink {
  private byte[] buffer = new byte[256];
  private int length;

  void octet(int value) {
    if (length == buffer.length) {
      buffer = Arrays.copyOf(buffer, length * 2);
    }
    buffer[length++] = (byte) value;
  }

  /** Seven bits an octet, least significant first; any 64 bits, taken as unsigned. */
  void unsigned(long value) {
    long rest = value;
    while ((rest & ~0x7fL) != 0) {
      octet((int) (rest & 0x7f) | 0x80);
      rest >>>= 7;
    }
    octet((int) rest);
  }

  /** As {@link #unsigned}, with the sign folded into the lowest bit. */
  void signed(long value) {
    unsigned((value << 1) ^ (value >> 63));
  }

  void fixed64(long value) {
    for (int shift = 56; shift >= 0; shift -= 8) {
      octet((int) (value >>> shift));
    }
  }

  void octets(byte[] source) {
    if (length + source.length > buffer.length) {
      buffer = Arrays.copyOf(buffer, Math.max(buffer.length * 2, length + source.length));
    }
    System.arraycopy(source, 0, buffer, length, source.length);
    length += source.length;
  }

  void text(String text) {
    byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
    unsigned(utf8.length);
    octets(utf8);
  }

  int length() {
    return length;
  }

  byte[] toArray() {
    return Arrays.copyOf(buffer, length);
  }
}
