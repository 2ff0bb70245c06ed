package feedwitness.profile;

import feedwitness.quantity.Octets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** How an instrument's messages look and are asked for. */
public sealed interface Protocol {

  /**
   * Text lines, pushed by the instrument or asked for.
   *
   * @param query sent to ask for a line; empty if the instrument pushes
   * @param pattern matched against the whole line without its terminator; named groups are fields
   * @param ignore lines that are no readings (a heading, a prompt) and no fault either
   * @param longestLine octets, 8 to 4096
   */
  record Line(Optional<Octets> query, Pattern pattern, Optional<Pattern> ignore, int longestLine)
      implements Protocol {}

  /**
   * Modbus RTU; one reading is made of all reads, asked in order.
   *
   * @param reads at least one
   */
  record Modbus(List<Read> reads) implements Protocol {
    public Modbus {
      reads = List.copyOf(reads);
      if (reads.isEmpty()) {
        throw new IllegalArgumentException("a Modbus profile needs at least one read");
      }
    }
  }

  /**
   * One Modbus request.
   *
   * @param function 3 (holding registers) or 4 (input registers)
   * @param start first register as on the wire, 0 to 65535
   * @param count registers, 1 to 125
   */
  record Read(int function, int start, int count) {}
}
