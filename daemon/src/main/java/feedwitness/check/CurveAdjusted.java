package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import java.util.Map;
import java.util.Optional;

/**
 * The calibration in use changes from here on; what was recorded before keeps its own.
 *
 * @param id names the adjustment, so that it can be undone
 * @param before curve until now
 * @param after curve from now on; the same where the instrument adjusted itself
 * @param undoes id of the adjustment it takes back; empty if none
 * @param mark last measurement with the old curve, if known
 */
public record CurveAdjusted(
    Entry entry,
    String id,
    Method method,
    CalibrationCurve before,
    CalibrationCurve after,
    String reason,
    String undoes,
    Optional<Mark> mark)
    implements CheckEvidence {
  public static final String KIND = "curve-adjusted";

  /** How it was done. */
  public enum Method {
    ONE_POINT("in one standard: the cell constant"),
    TWO_POINT("in two standards: slope and offset"),
    BY_INSTRUMENT("by the instrument itself"),
    UNDO("back to the curve before");

    private final String words;

    Method(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  /** As proposed and confirmed. */
  static CurveAdjusted proposed(
      Entry entry,
      String id,
      CalibrationCurve inUse,
      AdjustmentSum.Proposed proposed,
      Optional<Mark> mark) {
    return new CurveAdjusted(
        entry, id, proposed.method(), inUse, proposed.curve(), proposed.words(), "", mark);
  }

  /**
   * The instrument was adjusted by its own means; our curve stays.
   *
   * @param inUse our curve
   */
  public static CurveAdjusted byInstrument(
      Entry entry, String id, CalibrationCurve inUse, Optional<Mark> mark) {
    return new CurveAdjusted(
        entry, id, Method.BY_INSTRUMENT, inUse, inUse, "adjusted at the instrument", "", mark);
  }

  /** One line for people. */
  public String words() {
    return method == Method.BY_INSTRUMENT
        ? "adjusted %s; our curve stays: %s".formatted(method.words(), CurveText.words(after))
        : "adjusted %s; from %s to %s"
            .formatted(method.words(), CurveText.words(before), CurveText.words(after));
  }

  @Override
  public Map<String, String> toFields() {
    return entry
        .write()
        .put("id", id)
        .put("method", method)
        .put("before", before)
        .put("after", after)
        .put("reason", reason)
        .put("undoes", undoes)
        .mark("mark", mark)
        .done();
  }

  /** Reads {@link #toFields}. */
  public static CurveAdjusted fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new CurveAdjusted(
        Entry.read(in),
        in.text("id"),
        in.word("method", Method.class),
        in.curve("before"),
        in.curve("after"),
        in.text("reason"),
        in.text("undoes"),
        in.maybeMark("mark"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
