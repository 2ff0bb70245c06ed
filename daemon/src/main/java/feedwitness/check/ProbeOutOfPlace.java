package feedwitness.check;

import java.util.Map;

/**
 * The probe was somewhere else without a word: readings between the marks are not of its place.
 *
 * @param from last measurement in its place
 * @param to first measurement in its place again
 * @param sure whether that is sure or only likely
 * @param note for people, what gave it away
 */
public record ProbeOutOfPlace(Entry entry, Mark from, Mark to, boolean sure, String note)
    implements CheckEvidence {
  public static final String KIND = "probe-out-of-place";

  @Override
  public Map<String, String> toFields() {
    return entry
        .write()
        .put("from", from)
        .put("to", to)
        .put("sure", Boolean.toString(sure))
        .put("note", note)
        .done();
  }

  /** Reads {@link #toFields}. */
  public static ProbeOutOfPlace fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new ProbeOutOfPlace(
        Entry.read(in),
        in.mark("from"),
        in.mark("to"),
        Boolean.parseBoolean(in.text("sure")),
        in.text("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
