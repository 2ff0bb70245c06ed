package feedwitness.check;

import feedwitness.quantity.PointName;

/**
 * What is checked: the probe of a measuring point, or a meter in somebody's hand.
 *
 * @param name of the point or the meter
 */
public record CheckSubject(Kind kind, PointName name) implements Comparable<CheckSubject> {

  /** Which of the two. */
  public enum Kind {
    PROBE(""),
    METER("meter/");

    private final String prefix;

    Kind(String prefix) {
      this.prefix = prefix;
    }
  }

  /** The probe at a point. */
  public static CheckSubject probe(PointName point) {
    return new CheckSubject(Kind.PROBE, point);
  }

  /** A handheld meter. */
  public static CheckSubject meter(PointName name) {
    return new CheckSubject(Kind.METER, name);
  }

  /** {@code tank} for a probe, {@code meter/pen} for a meter. */
  public String toText() {
    return kind.prefix + name.text();
  }

  /**
   * Reads {@link #toText}.
   *
   * @throws IllegalArgumentException if it is no such text
   */
  public static CheckSubject parse(String text) {
    return text.startsWith(Kind.METER.prefix)
        ? meter(new PointName(text.substring(Kind.METER.prefix.length())))
        : probe(new PointName(text));
  }

  @Override
  public int compareTo(CheckSubject other) {
    return toText().compareTo(other.toText());
  }

  @Override
  public String toString() {
    return toText();
  }
}
