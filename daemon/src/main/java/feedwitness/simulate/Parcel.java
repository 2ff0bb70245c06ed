package feedwitness.simulate;

/**
 * An amount of liquid on its way: everything in it adds up, so nothing is lost when parcels meet.
 *
 * @param litres volume, L; 0 or more
 * @param mineral conductivity-equivalents of the source water's minerals, mS/cm · L
 * @param salt dissolved feed, g
 * @param heat L · °C
 */
record Parcel(double litres, double mineral, double salt, double heat) {
  static final Parcel NONE = new Parcel(0, 0, 0, 0);

  /** Litres of a liquid. */
  static Parcel of(double litres, Liquid liquid) {
    return new Parcel(
        litres, litres * liquid.mineral(), litres * liquid.salt(), litres * liquid.celsius());
  }

  Parcel plus(Parcel other) {
    return new Parcel(
        litres + other.litres, mineral + other.mineral, salt + other.salt, heat + other.heat);
  }

  /** This part of it, 0 to 1. */
  Parcel part(double share) {
    return new Parcel(litres * share, mineral * share, salt * share, heat * share);
  }
}
