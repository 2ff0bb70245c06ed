package feedwitness.check;

import java.util.Map;
import java.util.Optional;

/**
 * The probe was cleaned; nothing may be interpolated across it.
 *
 * @param how for people, for example {@code soft brush, vinegar}
 * @param mark last measurement before it, if known
 */
public record ProbeCleaned(Entry entry, String how, Optional<Mark> mark) implements CheckEvidence {
  public static final String KIND = "probe-cleaned";

  @Override
  public Map<String, String> toFields() {
    return entry.write().put("how", how).mark("mark", mark).done();
  }

  /** Reads {@link #toFields}. */
  public static ProbeCleaned fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new ProbeCleaned(Entry.read(in), in.text("how"), in.maybeMark("mark"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
