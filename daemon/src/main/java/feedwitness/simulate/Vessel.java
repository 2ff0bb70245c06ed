package feedwitness.simulate;

/** A well-mixed volume. What is drawn is gone from here and whole in the parcel. */
final class Vessel {
  private double litres;
  private double mineral;
  private double salt;
  private double heat;
  private Liquid last;

  Vessel(double litres, Liquid liquid) {
    last = liquid;
    add(Parcel.of(litres, liquid));
  }

  double litres() {
    return litres;
  }

  double salt() {
    return salt;
  }

  double mineral() {
    return mineral;
  }

  void add(Parcel parcel) {
    litres += parcel.litres();
    mineral += parcel.mineral();
    salt += parcel.salt();
    heat += parcel.heat();
  }

  /** Feed that dissolves here, g; its own volume is neglected. */
  void dissolve(double grams) {
    salt += grams;
  }

  /** Takes this much, or all there is. */
  Parcel draw(double wanted) {
    if (litres <= 0 || wanted <= 0) {
      return Parcel.NONE;
    }
    last = liquid();
    Parcel all = new Parcel(litres, mineral, salt, heat);
    if (wanted >= litres) {
      litres = 0;
      mineral = 0;
      salt = 0;
      heat = 0;
      return all;
    }
    Parcel taken = all.part(wanted / litres);
    litres -= taken.litres();
    mineral -= taken.mineral();
    salt -= taken.salt();
    heat -= taken.heat();
    return taken;
  }

  /**
   * What plants take: this much water, which the caller has checked is there, with at most this
   * much feed and mineral. Its heat leaves with the water.
   */
  Parcel transpire(double water, double grams, double minerals) {
    Parcel taken =
        new Parcel(
            water, Math.min(minerals, mineral), Math.min(grams, salt), heat / litres * water);
    litres -= taken.litres();
    mineral -= taken.mineral();
    salt -= taken.salt();
    heat -= taken.heat();
    return taken;
  }

  /** Moves its temperature towards another by a share of the difference, 0 to 1. */
  void relax(double celsius, double share) {
    heat += (celsius * litres - heat) * share;
  }

  /** What is in it; of an empty vessel, what was in it last. */
  Liquid liquid() {
    return litres > 0 ? new Liquid(mineral / litres, salt / litres, heat / litres) : last;
  }
}
