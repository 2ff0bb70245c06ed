package feedwitness.check;

import java.util.Map;

/**
 * A probe or meter was compared with something else than a standard in a beaker.
 *
 * @param against what it was compared with, for people
 * @param value what the probe or meter said
 * @param valueStandard its standard uncertainty, for this comparison alone
 * @param reference what the other said
 * @param referenceStandard its standard uncertainty
 * @param tolerance half-width, in the unit of the comparison's error
 * @param note for people; may be empty
 */
public record ComparisonMade(
    Entry entry,
    Type type,
    String against,
    double value,
    double valueStandard,
    double reference,
    double referenceStandard,
    double tolerance,
    String note)
    implements CheckEvidence {
  public static final String KIND = "comparison-made";

  /** With what. */
  public enum Type {
    /** A sample taken beside the probe, measured with a checked meter; mS/cm, error in %. */
    GRAB_SAMPLE("sample measured with another meter", true),
    /** The line beside the source while nothing is injected; mS/cm, error in %. */
    PLAIN_WATER("plain water, line beside source", true),
    /** A reference thermometer; °C, error in K. */
    THERMOMETER("reference thermometer", false);

    private final String words;
    private final boolean relative;

    Type(String words, boolean relative) {
      this.words = words;
      this.relative = relative;
    }

    /** For people. */
    public String words() {
      return words;
    }

    /** Whether the error is in % of the reference (mS/cm) or a difference (K). */
    public boolean relative() {
      return relative;
    }

    /** Unit of error and tolerance. */
    public String unit() {
      return relative ? "%" : "K";
    }
  }

  /** In the unit of the type. */
  public double error() {
    return type.relative() ? 100 * (value / reference - 1) : value - reference;
  }

  /** Twice the standard uncertainty of the error, in the unit of the type. */
  public double expanded() {
    double u =
        Math.hypot(
            valueStandard,
            type.relative() ? value / reference * referenceStandard : referenceStandard);
    return 2 * (type.relative() ? 100 * u / reference : u);
  }

  /** Of this comparison. */
  public Verdict verdict() {
    return Verdict.of(error(), expanded(), tolerance);
  }

  /** One line for people. */
  public String words() {
    String sign = error() < 0 ? "low" : "high";
    return "%s (%s): %s %s %s ± %s %s, tolerance %s %s: %s"
        .formatted(
            type.words(),
            against,
            Say.fixed(Math.abs(error()), 1),
            type.unit(),
            sign,
            Say.fixed(expanded(), 1),
            type.unit(),
            Say.fixed(tolerance, 1),
            type.unit(),
            verdict().words());
  }

  @Override
  public Map<String, String> toFields() {
    return entry
        .write()
        .put("type", type)
        .put("against", against)
        .put("value", value)
        .put("value-u", valueStandard)
        .put("reference", reference)
        .put("reference-u", referenceStandard)
        .put("tolerance", tolerance)
        .put("note", note)
        .done();
  }

  /** Reads {@link #toFields}. */
  public static ComparisonMade fromFields(Map<String, String> fields) {
    FieldReader in = new FieldReader(KIND, fields);
    return new ComparisonMade(
        Entry.read(in),
        in.word("type", Type.class),
        in.text("against"),
        in.number("value"),
        in.number("value-u"),
        in.number("reference"),
        in.number("reference-u"),
        in.number("tolerance"),
        in.text("note"));
  }

  @Override
  public String kind() {
    return KIND;
  }
}
