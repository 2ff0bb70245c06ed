package feedwitness.check;

import java.util.Map;

/** Something worth remembering happened during a check, for example a reading in a wrong bottle. */
public record CheckNoted(Entry entry, String note) implements CheckEvidence {
  public static final String KIND = "check-noted";

  @Override
  public Map<String, String> toFields() {
    return entry.write().put("note", note).done();
  }

  /** Reads {@link #toFields}. */
  public static CheckNoted fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new CheckNoted(Entry.read(in), in.text("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
