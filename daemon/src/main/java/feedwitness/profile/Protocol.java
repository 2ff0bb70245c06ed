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
   * @param query sent to ask for a line, 1 to 256 octets; empty if the instrument pushes
   * @param pattern matched against the whole line without its terminator; named groups are fields
   * @param ignore lines that are no readings (a heading, a prompt) and no fault either
   * @param longestLine octets, 8 to 4096
   */
  record Line(Optional<Octets> query, Pattern pattern, Optional<Pattern> ignore, int longestLine)
      implements Protocol {
    private static final int LONGEST_QUERY = 256;

    public Line {
      int asked = query.map(Octets::length).orElse(1);
      if (asked < 1 || asked > LONGEST_QUERY) {
        throw new IllegalArgumentException(
            "query of %d octets is outside 1 to %d; leave it out if the instrument sends by itself"
                .formatted(asked, LONGEST_QUERY));
      }
      if (longestLine < 8 || longestLine > 4096) {
        throw new IllegalArgumentException(
            "longest line %d is outside 8 to 4096 octets".formatted(longestLine));
      }
      EmptyRepeats.check(pattern);
      ignore.ifPresent(EmptyRepeats::check);
    }

    /** Whether the pattern has a group of this name. */
    boolean hasGroup(String name) {
      try {
        // names are known only after a match, so a twin is asked that matches the empty text first
        var matcher = Pattern.compile("|" + pattern.pattern(), pattern.flags()).matcher("");
        return matcher.find() && matcher.start(name) == -1;
      } catch (IllegalArgumentException e) {
        return false;
      }
    }
  }

  /**
   * Modbus RTU; one reading is made of all reads, asked in order.
   *
   * @param reads 1 to 16
   */
  record Modbus(List<Read> reads) implements Protocol {
    private static final int MOST_READS = 16;

    public Modbus {
      reads = List.copyOf(reads);
      if (reads.isEmpty() || reads.size() > MOST_READS) {
        throw new IllegalArgumentException(
            "a Modbus profile needs 1 to %d reads, not %d".formatted(MOST_READS, reads.size()));
      }
    }
  }

  /**
   * One Modbus request.
   *
   * @param function 3 (holding registers) or 4 (input registers)
   * @param start first register as on the wire, 0 to 65535
   * @param count registers, 1 to 125; the last one is at most 65535
   */
  record Read(int function, int start, int count) {
    public Read {
      checkFunction(function);
      if (count < 1 || count > 125) {
        throw new IllegalArgumentException(
            "count %d is outside 1 to 125 registers in one read".formatted(count));
      }
      checkRange(start, count);
    }

    /** Whether this read brings the registers of that place. */
    public boolean covers(Fields.Place.Registers place) {
      return function == place.function()
          && place.register() >= start
          && place.lastRegister() < start + count;
    }

    static void checkFunction(int function) {
      if (function != 3 && function != 4) {
        throw new IllegalArgumentException(
            "function %d is neither 3 (holding registers) nor 4 (input registers)"
                .formatted(function));
      }
    }

    static void checkRange(int first, int count) {
      if (first < 0 || first + count > 65536) {
        throw new IllegalArgumentException(
            ("registers %d to %d are outside 0 to 65535; a manual that counts from 40001 or 30001"
                    + " means register 0 by it")
                .formatted(first, first + count - 1));
      }
    }
  }
}
