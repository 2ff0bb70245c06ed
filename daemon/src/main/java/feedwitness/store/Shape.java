package feedwitness.store;

import feedwitness.quality.Flags;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Contact;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;

/**
 * What rarely changes from one sample of a run to the next: everything but stamp and numbers. A run
 * names each shape once and then only says which.
 */
sealed interface Shape {
  int MISSING = 2;

  Flags flags();

  int basis();

  void write(ByteSink sink);

  Kept kept(PointName point, Stamp stamp, double conductivity, double temperature);

  /** An indication, less its numbers. */
  record Indicated(
      Indication.Origin origin,
      ConductivityUnit conductivityUnit,
      TemperatureUnit temperatureUnit,
      Contact contact,
      Flags flags,
      int basis)
      implements Shape {
    @Override
    public void write(ByteSink sink) {
      sink.octet(Codes.of(origin) | Codes.of(contact));
      sink.octet(Codes.of(conductivityUnit));
      sink.octet(Codes.of(temperatureUnit));
      sink.unsigned(flags.bits());
      sink.unsigned(basis);
    }

    @Override
    public Kept kept(PointName point, Stamp stamp, double conductivity, double temperature) {
      Reading reading =
          new Reading(conductivity, conductivityUnit, temperature, temperatureUnit, contact);
      return new Kept(new Indication(point, stamp, reading, origin), flags, basis);
    }
  }

  /** A missing sample. */
  record Absent(Missing.Cause cause, String detail, Flags flags, int basis) implements Shape {
    @Override
    public void write(ByteSink sink) {
      sink.octet(MISSING);
      sink.unsigned(cause.code());
      sink.text(detail);
      sink.unsigned(flags.bits());
      sink.unsigned(basis);
    }

    @Override
    public Kept kept(PointName point, Stamp stamp, double conductivity, double temperature) {
      return new Kept(new Missing(point, stamp, cause, detail), flags, basis);
    }
  }

  /** Whether two indications certainly have the same shape; cheap, and false is no answer. */
  static boolean same(Kept one, Kept other) {
    if (one.basis() != other.basis()
        || one.flags().bits() != other.flags().bits()
        || !(one.sample() instanceof Indication a)
        || !(other.sample() instanceof Indication b)) {
      return false;
    }
    return a.origin() == b.origin()
        && a.reading().conductivityUnit() == b.reading().conductivityUnit()
        && a.reading().temperatureUnit() == b.reading().temperatureUnit()
        && a.reading().contact() == b.reading().contact();
  }

  static Shape of(Kept kept) {
    if (kept.sample() instanceof Indication indication) {
      Reading reading = indication.reading();
      return new Indicated(
          indication.origin(),
          reading.conductivityUnit(),
          reading.temperatureUnit(),
          reading.contact(),
          kept.flags(),
          kept.basis());
    }
    Missing missing = (Missing) kept.sample();
    return new Absent(missing.cause(), missing.detail(), kept.flags(), kept.basis());
  }

  static Shape read(ByteSource source) throws DamagedException {
    int kind = source.octet();
    if (kind == MISSING) {
      return new Absent(
          Codes.cause(source.count(255)),
          source.text(),
          new Flags(source.unsigned()),
          source.count(Integer.MAX_VALUE));
    }
    return new Indicated(
        Codes.origin(kind & Codes.ORIGIN),
        Codes.conductivity(source.octet()),
        Codes.temperature(source.octet()),
        Codes.contact(kind & ~Codes.ORIGIN),
        new Flags(source.unsigned()),
        source.count(Integer.MAX_VALUE));
  }
}
