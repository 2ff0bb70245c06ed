package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The instruments' side of Modbus RTU: answers requests for registers, refuses others by exception,
 * stays silent to damaged frames and to other units. Pure.
 */
final class ModbusSlave {
  private static final int ILLEGAL_FUNCTION = 1;
  private static final int ILLEGAL_ADDRESS = 2;
  private static final int ILLEGAL_VALUE = 3;
  private static final int MOST_REGISTERS = 125;
  private static final int READ_REQUEST = 8;

  /**
   * One instrument.
   *
   * @param function the only one it knows, 3 or 4
   * @param registers from address 0, 0 to 65 535
   */
  record Unit(int function, List<Integer> registers) {
    Unit {
      registers = List.copyOf(registers);
    }

    /** Two IEEE floats, each high word first, high octet first. */
    static Unit floats(int function, double first, double second) {
      int a = Float.floatToIntBits((float) first);
      int b = Float.floatToIntBits((float) second);
      return new Unit(function, List.of(a >>> 16, a & 0xffff, b >>> 16, b & 0xffff));
    }

    /** An unsigned and a signed register; what does not fit shows the nearest that does. */
    static Unit integers(int function, long unsigned, long signed) {
      int first = (int) Math.max(0, Math.min(0xffff, unsigned));
      int second = (int) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, signed));
      return new Unit(function, List.of(first, second & 0xffff));
    }

    /** With one more register, 1 while a contact is closed. */
    Unit withContact(boolean closed) {
      List<Integer> all = new ArrayList<>(registers);
      all.add(closed ? 1 : 0);
      return new Unit(function, all);
    }
  }

  private ModbusSlave() {}

  /** The answer to one whole frame, or nothing. */
  static Octets answer(Octets request, Map<Integer, Unit> bus) {
    if (!Crc16.holds(request)) {
      return Octets.NONE;
    }
    @Nullable Unit unit = bus.get(request.at(0));
    if (unit == null) {
      return Octets.NONE;
    }
    if (request.at(1) != unit.function()) {
      return refusal(request, ILLEGAL_FUNCTION);
    }
    if (request.length() != READ_REQUEST) {
      return refusal(request, ILLEGAL_VALUE);
    }
    int from = request.at(2) << 8 | request.at(3);
    int count = request.at(4) << 8 | request.at(5);
    if (count < 1 || count > MOST_REGISTERS) {
      return refusal(request, ILLEGAL_VALUE);
    }
    if (from + count > unit.registers().size()) {
      return refusal(request, ILLEGAL_ADDRESS);
    }
    return registers(request, unit.registers().subList(from, from + count));
  }

  private static Octets registers(Octets request, List<Integer> values) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(request.at(0));
    out.write(request.at(1));
    out.write(2 * values.size());
    for (int value : values) {
      out.write(value >>> 8);
      out.write(value);
    }
    return checked(out);
  }

  private static Octets refusal(Octets request, int code) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(request.at(0));
    out.write(request.at(1) | 0x80);
    out.write(code);
    return checked(out);
  }

  private static Octets checked(ByteArrayOutputStream out) {
    Octets body = Octets.of(out.toByteArray());
    int crc = Crc16.of(body, body.length());
    out.write(crc);
    out.write(crc >>> 8);
    return Octets.of(out.toByteArray());
  }
}
