package feedwitness.frame;

import feedwitness.quantity.Octets;

/**
 * A request to read registers (Modbus application protocol V1.1b3, sections 6.3 and 6.4).
 *
 * @param unit address on the bus, 1 to 247
 * @param function 3 (holding registers) or 4 (input registers)
 * @param start first register as on the wire, 0 to 65535
 * @param count registers, 1 to 125; the last one is at most 65535
 */
public record ModbusRequest(int unit, int function, int start, int count) {
  /** Octets of a reply that are not registers: unit, function, count and check. */
  private static final int AROUND_REGISTERS = 5;

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException naming item, value and limit
   */
  public ModbusRequest {
    if (unit < 1 || unit > 247) {
      throw new IllegalArgumentException("Modbus unit %d is outside 1 to 247".formatted(unit));
    }
    if (function != 3 && function != 4) {
      throw new IllegalArgumentException(
          "Modbus function %d is neither 3 nor 4".formatted(function));
    }
    if (count < 1 || count > 125) {
      throw new IllegalArgumentException(
          "Modbus count %d is outside 1 to 125 registers".formatted(count));
    }
    if (start < 0 || start + count > 65536) {
      throw new IllegalArgumentException(
          "Modbus registers %d to %d are outside 0 to 65535".formatted(start, start + count - 1));
    }
  }

  /** What to send, with its check. */
  public Octets octets() {
    return ModbusCrc.append(
        Octets.of(
            new byte[] {
              (byte) unit,
              (byte) function,
              (byte) (start >>> 8),
              (byte) start,
              (byte) (count >>> 8),
              (byte) count
            }));
  }

  /** Octets of the whole reply, 7 to 255. */
  public int replyLength() {
    return AROUND_REGISTERS + 2 * count;
  }

  /** For people: {@code unit 3, function 4, registers 0 to 1}. */
  public String text() {
    return "unit %d, function %d, registers %d to %d"
        .formatted(unit, function, start, start + count - 1);
  }
}
