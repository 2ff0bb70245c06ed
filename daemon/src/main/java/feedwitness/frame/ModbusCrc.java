package feedwitness.frame;

import feedwitness.quantity.Octets;
import java.util.Arrays;

/**
 * The cyclic redundancy check of Modbus over serial line (specification V1.02, section 6.2.2): 16
 * bits, polynomial 0xA001 reflected, start value 0xFFFF, sent low octet first.
 */
public final class ModbusCrc {
  private static final int POLYNOMIAL = 0xA001;

  private ModbusCrc() {}

  /** The check over {@code length} octets from {@code offset}, 0 to 0xFFFF. */
  static int of(byte[] octets, int offset, int length) {
    int crc = 0xFFFF;
    for (int i = offset; i < offset + length; i++) {
      crc ^= octets[i] & 0xff;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) != 0 ? (crc >>> 1) ^ POLYNOMIAL : crc >>> 1;
      }
    }
    return crc;
  }

  /** The check over all octets, 0 to 0xFFFF. */
  public static int of(Octets octets) {
    return of(octets.toArray(), 0, octets.length());
  }

  /** The octets with their check behind them, low octet first. */
  public static Octets append(Octets octets) {
    int crc = of(octets);
    byte[] whole = Arrays.copyOf(octets.toArray(), octets.length() + 2);
    whole[octets.length()] = (byte) crc;
    whole[octets.length() + 1] = (byte) (crc >>> 8);
    return Octets.of(whole);
  }
}
