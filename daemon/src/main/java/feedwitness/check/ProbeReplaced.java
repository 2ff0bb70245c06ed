package feedwitness.check;

import java.util.Map;
import java.util.Optional;

/**
 * Another probe or cell hangs there from here on: what checks said of the one before says nothing
 * of it. Nothing is interpolated across it, the curve of the old one is no longer used, chart and
 * interval begin anew. What was recorded stays.
 *
 * @param what for people, for example {@code new cell, serial number 4711}
 * @param mark last measurement with the old one, if known
 */
public record ProbeReplaced(Entry entry, String what, Optional<Mark> mark)
    implements CheckEvidence {
  public static final String KIND = "probe-replaced";

  /** One line for people. */
  public String words() {
    return what.isBlank() ? "replaced" : "replaced: " + what;
  }

  @Override
  public Map<String, String> toFields() {
    return entry.write().put("what", what).mark("mark", mark).done();
  }

  /** Reads {@link #toFields}. */
  public static ProbeReplaced fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new ProbeReplaced(Entry.read(in), in.text("what"), in.maybeMark("mark"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
