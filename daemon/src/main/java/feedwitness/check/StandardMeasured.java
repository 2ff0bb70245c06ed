package feedwitness.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What one round of a check found in one standard. */
public record StandardMeasured(Entry entry, Round round, StandardResult result)
    implements CheckEvidence {
  public static final String KIND = "standard-measured";

  @Override
  public Map<String, String> toFields() {
    List<String> doubts = new ArrayList<>();
    for (Doubt doubt : result.doubts()) {
      doubts.add(
          "%s %s %s".formatted(doubt.source().name(), doubt.standardPercent(), doubt.assumed()));
    }
    return entry
        .write()
        .put("round", round)
        .put("standard", result.standard())
        .put("title", result.title())
        .put("nominal", result.nominal())
        .put("reference", result.reference())
        .put("indicated", result.indicated())
        .put("shown", result.shown())
        .put("celsius", result.celsius())
        .put("readings", Integer.toString(result.readings()))
        .lines("doubt", doubts)
        .put("tolerance", result.tolerancePercent())
        .done();
  }

  /** Reads {@link #toFields}. */
  public static StandardMeasured fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    List<Doubt> doubts = new ArrayList<>();
    for (int i = 0; i < in.lines("doubt").size(); i++) {
      doubts.add(in.read("doubt." + i, StandardMeasured::doubt));
    }
    return new StandardMeasured(
        Entry.read(in),
        in.word("round", Round.class),
        new StandardResult(
            in.text("standard"),
            in.text("title"),
            in.number("nominal"),
            in.number("reference"),
            in.number("indicated"),
            in.number("shown"),
            in.number("celsius"),
            in.whole("readings"),
            doubts,
            in.number("tolerance")));
  }

  private static Doubt doubt(String text) {
    String[] words = text.split(" ", -1);
    if (words.length != 3) {
      throw new IllegalArgumentException("not three words");
    }
    return new Doubt(
        Doubt.Source.valueOf(words[0]),
        Double.parseDouble(words[1]),
        Boolean.parseBoolean(words[2]));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
