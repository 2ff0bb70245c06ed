package feedwitness.quantity;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;

/** An immutable run of octets, as they went over a wire. */
public final class Octets {
  public static final Octets NONE = new Octets(new byte[0]);
  private static final HexFormat HEX = HexFormat.ofDelimiter(" ");

  private final byte[] content;

  private Octets(byte[] content) {
    this.content = content;
  }

  /** Copies the array. */
  public static Octets of(byte[] source) {
    return new Octets(source.clone());
  }

  /** Copies {@code length} octets from {@code offset}. */
  public static Octets of(byte[] source, int offset, int length) {
    return new Octets(Arrays.copyOfRange(source, offset, offset + length));
  }

  /** The octets of an ISO 8859-1 text. */
  public static Octets ofText(String text) {
    return new Octets(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  /** Reads pairs of hexadecimal digits separated by single spaces. */
  public static Octets ofHex(String hex) {
    return hex.isBlank()
        ? NONE
        : new Octets(HEX.parseHex(hex.strip().toLowerCase(java.util.Locale.ROOT)));
  }

  public int length() {
    return content.length;
  }

  /** The octet at {@code index}, 0 to 255. */
  public int at(int index) {
    return content[index] & 0xff;
  }

  /** Octets from {@code start} to before {@code end}. */
  public Octets slice(int start, int end) {
    return new Octets(Arrays.copyOfRange(content, start, end));
  }

  /** A copy as an array. */
  public byte[] toArray() {
    return content.clone();
  }

  /** As ISO 8859-1 text, every octet one character. */
  public String toText() {
    return new String(content, StandardCharsets.ISO_8859_1);
  }

  /** Hexadecimal, pairs separated by spaces. */
  public String toHex() {
    return HEX.formatHex(content);
  }

  /** Text with everything but printable ASCII shown as a middle dot. */
  public String toPrintable() {
    StringBuilder text = new StringBuilder(content.length);
    for (byte octet : content) {
      text.append(octet >= 0x20 && octet < 0x7f ? (char) octet : '·');
    }
    return text.toString();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Octets that && Arrays.equals(content, that.content);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(content);
  }

  @Override
  public String toString() {
    return toHex();
  }
}
