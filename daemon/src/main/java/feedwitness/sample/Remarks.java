package feedwitness.sample;

import feedwitness.profile.Fields.Place;

/** Words about numbers an instrument did not send. */
final class Remarks {
  private Remarks() {}

  /** A field without a number; {@code sent} is what stood there instead, empty if nothing. */
  static String none(String field, Place place, String sent) {
    return sent.isEmpty()
        ? "no %s in %s".formatted(field, place.text())
        : "no %s: %s holds %s".formatted(field, place.text(), sent);
  }

  /** Both remarks, either of which may be empty. */
  static String join(String one, String other) {
    return one.isEmpty() || other.isEmpty() ? one + other : one + "; " + other;
  }
}
