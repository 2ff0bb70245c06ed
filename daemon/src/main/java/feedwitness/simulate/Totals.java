package feedwitness.simulate;

/** Running sums of what came in from outside and what went out for good. */
final class Totals {
  private Parcel in = Parcel.NONE;
  private Parcel out = Parcel.NONE;

  Parcel in() {
    return in;
  }

  Parcel out() {
    return out;
  }

  /** Counts it and hands it on. */
  Parcel in(Parcel parcel) {
    in = in.plus(parcel);
    return parcel;
  }

  void out(Parcel parcel) {
    out = out.plus(parcel);
  }

  /** Grams of feed brought in. */
  void saltIn(double grams) {
    in = in.plus(new Parcel(0, 0, grams, 0));
  }
}
