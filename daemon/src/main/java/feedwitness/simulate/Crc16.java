package feedwitness.simulate;

import feedwitness.quantity.Octets;

/**
 * The check of Modbus over serial line, as its public specification (V1.02, 6.2.2) describes it bit
 * by bit: start with FFFF, shift right, polynomial A001; sent low octet first.
 */
final class Crc16 {
  private Crc16() {}

  /** Over the first {@code length} octets. */
  static int of(Octets octets, int length) {
    int register = 0xffff;
    for (int i = 0; i < length; i++) {
      register ^= octets.at(i);
      for (int bit = 0; bit < 8; bit++) {
        boolean carry = (register & 1) == 1;
        register >>>= 1;
        if (carry) {
          register ^= 0xa001;
        }
      }
    }
    return register;
  }

  /** Whether the last two octets are the check of all before. */
  static boolean holds(Octets frame) {
    int body = frame.length() - 2;
    return body >= 2 && of(frame, body) == (frame.at(body) | frame.at(body + 1) << 8);
  }
}
