package feedwitness.check;

import java.util.Map;
import java.util.Optional;

/**
 * The probe is back in its place: readings between the marks belong to a check, not to the place.
 *
 * @param from last measurement in its place before the check, if known
 * @param to first measurement in its place again, if known
 */
public record ProbeReturned(
    Entry entry, How how, Optional<Mark> from, Optional<Mark> to, String note)
    implements CheckEvidence {
  public static final String KIND = "probe-returned";

  /** How that is known. */
  public enum How {
    SAID,
    READINGS_LOOK_LIKE_BEFORE,
    TIME_LIMIT
  }

  @Override
  public Map<String, String> toFields() {
    return entry.write().put("how", how).mark("from", from).mark("to", to).put("note", note).done();
  }

  /** Reads {@link #toFields}. */
  public static ProbeReturned fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new ProbeReturned(
        Entry.read(in),
        in.word("how", How.class),
        in.maybeMark("from"),
        in.maybeMark("to"),
        in.text("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
