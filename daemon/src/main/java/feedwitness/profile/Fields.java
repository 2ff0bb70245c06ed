package feedwitness.profile;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import java.util.Locale;
import java.util.Optional;

/**
 * Where in a message conductivity and temperature stand, and in which unit.
 *
 * @param temperature empty if the instrument states none
 * @param contact where a flow or pump contact stands; empty if there is none
 */
public record Fields(
    Place conductivity,
    ConductivityUnit conductivityUnit,
    Optional<Place> temperature,
    TemperatureUnit temperatureUnit,
    Optional<ContactPlace> contact) {

  /**
   * A contact.
   *
   * @param place of a number
   * @param closedIsZero whether 0 says that it is closed, rather than any other number
   */
  public record ContactPlace(Place place, boolean closedIsZero) {}

  /** Without a contact. */
  public Fields(
      Place conductivity,
      ConductivityUnit conductivityUnit,
      Optional<Place> temperature,
      TemperatureUnit temperatureUnit) {
    this(conductivity, conductivityUnit, temperature, temperatureUnit, Optional.empty());
  }

  /**
   * Checks that the two numbers do not stand in the same place.
   *
   * @throws IllegalArgumentException if they do
   */
  public Fields {
    if (temperature.isPresent() && overlap(conductivity, temperature.get())) {
      throw new IllegalArgumentException(
          "conductivity and temperature are both read from %s; give each its own place"
              .formatted(conductivity.text()));
    }
    if (contact.isPresent()
        && (overlap(conductivity, contact.get().place())
            || temperature.filter(other -> overlap(other, contact.get().place())).isPresent())) {
      throw new IllegalArgumentException(
          "contact is read from %s like another field; give it its own place"
              .formatted(contact.get().place().text()));
    }
  }

  private static boolean overlap(Place one, Place other) {
    if (one instanceof Place.Group a && other instanceof Place.Group b) {
      return a.name().equals(b.name());
    }
    return one instanceof Place.Registers a
        && other instanceof Place.Registers b
        && a.function() == b.function()
        && a.register() <= b.lastRegister()
        && b.register() <= a.lastRegister();
  }

  /** Where a number stands. */
  public sealed interface Place {

    /** For people: {@code group 'temperature'}, {@code registers 2 to 3 (function 3)}. */
    String text();

    /**
     * A named group of the line pattern.
     *
     * @param name letters and digits, beginning with a letter
     * @param unitGroup another group that holds the unit as text; it goes before the field's own
     *     unit, and a line in which it is missing or unknown gives no reading
     */
    record Group(String name, Optional<String> unitGroup) implements Place {
      public Group {
        checkGroupName(name);
        unitGroup.ifPresent(Group::checkGroupName);
        if (unitGroup.isPresent() && unitGroup.get().equals(name)) {
          throw new IllegalArgumentException(
              "group '%s' cannot hold both the number and its unit".formatted(name));
        }
      }

      /** A group whose unit the profile knows. */
      public Group(String name) {
        this(name, Optional.empty());
      }

      private static void checkGroupName(String name) {
        if (!name.matches("[A-Za-z][A-Za-z0-9]*")) {
          throw new IllegalArgumentException(
              "group '%s' is no name of a group; use letters and digits, a letter first"
                  .formatted(name));
        }
      }

      @Override
      public String text() {
        return "group '" + name + "'";
      }
    }

    /**
     * Registers of a Modbus reply: indicated = raw × scale + offset.
     *
     * @param function 3 or 4, one of the profile's reads
     * @param register address as on the wire, 0 to 65535
     * @param type how many registers and how to read them
     * @param order of octets; A is the most significant; 16-bit types use ABCD or BADC
     * @param scale in the field's unit per count; finite, not 0
     * @param offset in the field's unit; finite
     */
    record Registers(
        int function, int register, Type type, OctetOrder order, double scale, double offset)
        implements Place {
      public Registers {
        Protocol.Read.checkFunction(function);
        Protocol.Read.checkRange(register, type.registers());
        if (type.registers() == 1 && order != OctetOrder.ABCD && order != OctetOrder.BADC) {
          throw new IllegalArgumentException(
              "octet order %s needs two registers, but %s is one; use ABCD or BADC"
                  .formatted(order, type.text()));
        }
        if (!Double.isFinite(scale) || scale == 0) {
          throw new IllegalArgumentException(
              "scale %s is no factor; give a number other than 0".formatted(scale));
        }
        if (!Double.isFinite(offset)) {
          throw new IllegalArgumentException("offset %s is no number".formatted(offset));
        }
      }

      /** The last register the number takes up. */
      public int lastRegister() {
        return register + type.registers() - 1;
      }

      @Override
      public String text() {
        return type.registers() == 1
            ? "register %d (function %d)".formatted(register, function)
            : "registers %d to %d (function %d)".formatted(register, lastRegister(), function);
      }
    }
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

    /** As written in a profile: {@code float32}. */
    public String text() {
      return name().toLowerCase(Locale.ROOT);
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
