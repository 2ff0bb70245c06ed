package feedwitness.store;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Contact;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import java.util.List;

/** Numbers that stand for named things in the file. Append only: never reorder, never reuse. */
final class Codes {
  private static final List<ConductivityUnit> CONDUCTIVITY =
      List.of(
          ConductivityUnit.MICROSIEMENS_PER_CM,
          ConductivityUnit.MILLISIEMENS_PER_CM,
          ConductivityUnit.DECISIEMENS_PER_M,
          ConductivityUnit.MILLISIEMENS_PER_M,
          ConductivityUnit.SIEMENS_PER_M,
          ConductivityUnit.CF);
  private static final List<TemperatureUnit> TEMPERATURE =
      List.of(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT);

  /** The bits of an origin; those above are a contact's, none in a file without contacts. */
  static final int ORIGIN = 0x0f;

  private static final int PER_CONTACT = 0x10;
  private static final List<Contact> CONTACT = List.of(Contact.NONE, Contact.OPEN, Contact.CLOSED);

  private Codes() {}

  static int of(Contact contact) {
    return PER_CONTACT * known(CONTACT.indexOf(contact), contact);
  }

  static Contact contact(int code) throws DamagedException {
    int index = code / PER_CONTACT;
    if (index >= CONTACT.size()) {
      throw new DamagedException("contact %d is not known".formatted(index));
    }
    return CONTACT.get(index);
  }

  static int of(ConductivityUnit unit) {
    return known(CONDUCTIVITY.indexOf(unit), unit);
  }

  /** 2 says that a sample is missing, see {@link Shape#MISSING}. */
  static int of(Indication.Origin origin) {
    return switch (origin) {
      case PROBE -> 0;
      case TYPED -> 1;
      case IMPORTED -> 3;
    };
  }

  static Indication.Origin origin(int code) throws DamagedException {
    for (Indication.Origin origin : Indication.Origin.values()) {
      if (of(origin) == code) {
        return origin;
      }
    }
    throw new DamagedException("kind of sample %d is not known".formatted(code));
  }

  static int of(TemperatureUnit unit) {
    return known(TEMPERATURE.indexOf(unit), unit);
  }

  static ConductivityUnit conductivity(int code) throws DamagedException {
    return get(CONDUCTIVITY, code);
  }

  static TemperatureUnit temperature(int code) throws DamagedException {
    return get(TEMPERATURE, code);
  }

  static Missing.Cause cause(int code) throws DamagedException {
    for (Missing.Cause cause : Missing.Cause.values()) {
      if (cause.code() == code) {
        return cause;
      }
    }
    throw new DamagedException("cause %d is not known".formatted(code));
  }

  private static int known(int index, Object thing) {
    if (index < 0) {
      throw new IllegalStateException(thing + " has no code in the store");
    }
    return index;
  }

  private static <T> T get(List<T> list, int code) throws DamagedException {
    if (code < 0 || code >= list.size()) {
      throw new DamagedException("unit %d is not known".formatted(code));
    }
    return list.get(code);
  }
}
