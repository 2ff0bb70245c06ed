package feedwitness.check;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;

/**
 * Measurements after one mark up to another may be wrong by a likely error. They stay as they are;
 * whoever shows them carries this along.
 *
 * @param after last measurement that is not qualified
 * @param through last measurement that is
 * @param shape what is known of the error between the marks
 * @param start errors at the beginning, as left by the last good check
 * @param end errors at the end, as found
 */
public record RangeQualified(
    Entry entry, Mark after, Mark through, Shape shape, Errors start, Errors end, String note)
    implements CheckEvidence {
  public static final String KIND = "range-qualified";

  /** What is known of the error between the marks. */
  public enum Shape {
    /** Nothing broke in: on a straight line in time from start to end. */
    INTERPOLATED,
    /** A cleaning or adjustment at the end wiped it out: known at the start only. */
    START_KNOWN,
    /** A cleaning or adjustment at the start: known at the end only. */
    END_KNOWN,
    /** Between two cleanings or adjustments: known at neither end. */
    UNKNOWN
  }

  /** Whether a measurement is among those qualified. */
  public boolean covers(Mark mark) {
    return mark.compareTo(after) > 0 && mark.compareTo(through) <= 0;
  }

  /**
   * Likely error, %, of a measurement at a wall time and a strength in mS/cm at 25 °C, with its
   * standard uncertainty. Where it is known at one end only, that end stands, with its whole size
   * as uncertainty; where at neither, 0 with the larger of both sizes.
   */
  public Errors.Node likely(Instant at, double strength) {
    Errors.Node a = start.at(strength);
    Errors.Node b = end.at(strength);
    return switch (shape) {
      case INTERPOLATED -> between(a, b, share(at));
      case START_KNOWN -> doubtful(a);
      case END_KNOWN -> doubtful(b);
      case UNKNOWN ->
          new Errors.Node(
              a.strength(),
              0,
              Math.max(doubtful(a).standardPercent(), doubtful(b).standardPercent()));
    };
  }

  private static Errors.Node doubtful(Errors.Node node) {
    return new Errors.Node(
        node.strength(), node.percent(), Math.hypot(node.standardPercent(), node.percent()));
  }

  private static Errors.Node between(Errors.Node a, Errors.Node b, double share) {
    double halfWay = Math.abs(b.percent() - a.percent()) / 2 / Math.sqrt(3);
    // When in the interval it came is not known; widest in the middle, nothing at either end.
    double shapeDoubt = halfWay * 4 * share * (1 - share);
    return new Errors.Node(
        a.strength(),
        a.percent() + share * (b.percent() - a.percent()),
        Math.hypot(Math.max(a.standardPercent(), b.standardPercent()), shapeDoubt));
  }

  private double share(Instant at) {
    double whole = Duration.between(after.at(), through.at()).toMillis();
    if (!(whole > 0)) {
      return 1;
    }
    return Math.min(1, Math.max(0, Duration.between(after.at(), at).toMillis() / whole));
  }

  /**
   * What the measurement would have been without the likely error, same unit as given; for a curve
   * beside the recorded one.
   *
   * @param strength mS/cm at 25 °C, as recorded
   */
  public double corrected(Instant at, double strength) {
    return strength / (1 + likely(at, strength).percent() / 100);
  }

  @Override
  public Map<String, String> toFields() {
    return entry
        .write()
        .put("after", after)
        .put("through", through)
        .put("shape", shape)
        .put("start", start.toText())
        .put("end", end.toText())
        .put("note", note)
        .done();
  }

  /** Reads {@link #toFields}. */
  public static RangeQualified fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new RangeQualified(
        Entry.read(in),
        in.mark("after"),
        in.mark("through"),
        in.word("shape", Shape.class),
        in.read("start", Errors::parse),
        in.read("end", Errors::parse),
        in.text("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
