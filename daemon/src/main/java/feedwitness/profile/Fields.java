package feedwitness.profile;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import java.util.Optional;

/**
 * Where in a message conductivity and temperature stand, and in which unit.
 *
 * @param temperature empty if the instrument states none
 */
public record Fields(
    Place conductivity,
    ConductivityUnit conductivityUnit,
    Optional<Place> temperature,
    TemperatureUnit temperatureUnit) {

  /** Where a number stands. */
  public sealed interface Place {
    /** A named group of the line pattern. */
    record Group(String name) implements Place {}

    /**
     * Registers of a Modbus reply: indicated = raw × scale + offset.
     *
     * @param function 3 or 4, one of the profile's reads
     * @param register address as on the wire
     * @param type how many registers and how to read them
     * @param order of octets; A is the most significant
     */
    record Registers(
        int function, int register, Type type, OctetOrder order, double scale, double offset)
        implements Place {}
  }

  /** Numeric types in Modbus registers. */
  public enum Type {
    INT16(1),
    UINT16(1),
    INT32(2),
    UINT32(2),
    FLOAT32(2);

    private final int registers;

    Type(int registers) {
      this.registers = registers;
    }

    /** Registers of 16 bits each. */
    public int registers() {
      return registers;
    }
  }

  /** Octet orders of a 32-bit number over two registers; 16-bit ones use ABCD or BADC. */
  public enum OctetOrder {
    ABCD,
    BADC,
    CDAB,
    DCBA
  }
}
