package feedwitness.check;

import feedwitness.measurement.Basis;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A check begins; from here on the point is out of its place by design.
 *
 * @param standards names on the shelf, weakest first
 * @param titles the same for people, with lots
 * @param tolerancePercent half-width, %
 * @param percentPerKelvin of an instrument that compensates by itself, %/K; NaN if unknown
 * @param basis what made the point's numbers at that time
 * @param before how the point read in its place; mS/cm at 25 °C, NaN if unknown
 * @param mark last measurement in its place
 * @param notes what was said about standards and strengths, and accepted
 */
public record CheckStarted(
    Entry entry,
    List<String> standards,
    List<String> titles,
    double tolerancePercent,
    double percentPerKelvin,
    Basis basis,
    double before,
    Optional<Mark> mark,
    List<String> notes)
    implements CheckEvidence {
  public static final String KIND = "check-started";

  public CheckStarted {
    standards = List.copyOf(standards);
    titles = List.copyOf(titles);
    notes = List.copyOf(notes);
  }

  @Override
  public Map<String, String> toFields() {
    return entry
        .write()
        .lines("standard", standards)
        .lines("title", titles)
        .put("tolerance", tolerancePercent)
        .put("alpha", percentPerKelvin)
        .put("basis", basis.toText())
        .put("before", before)
        .mark("mark", mark)
        .lines("note", notes)
        .done();
  }

  /** Reads {@link #toFields}. */
  public static CheckStarted fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new CheckStarted(
        Entry.read(in),
        in.lines("standard"),
        in.lines("title"),
        in.number("tolerance"),
        in.number("alpha"),
        in.read("basis", Basis::parse),
        in.number("before"),
        in.maybeMark("mark"),
        in.lines("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
