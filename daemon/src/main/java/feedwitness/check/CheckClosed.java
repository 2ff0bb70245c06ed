package feedwitness.check;

import java.util.Map;

/**
 * A check ends.
 *
 * @param verdict of the last round that was whole
 * @param note for people
 */
public record CheckClosed(Entry entry, Ending ending, Verdict verdict, String note)
    implements CheckEvidence {
  public static final String KIND = "check-closed";

  /** How it ended. */
  public enum Ending {
    FINISHED("finished"),
    ABANDONED("abandoned by hand"),
    TIMED_OUT("abandoned: nothing happened for too long"),
    LOST("abandoned after a restart");

    private final String words;

    Ending(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  @Override
  public Map<String, String> toFields() {
    return entry.write().put("ending", ending).put("verdict", verdict).put("note", note).done();
  }

  /** Reads {@link #toFields}. */
  public static CheckClosed fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new CheckClosed(
        Entry.read(in),
        in.word("ending", Ending.class),
        in.word("verdict", Verdict.class),
        in.text("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
