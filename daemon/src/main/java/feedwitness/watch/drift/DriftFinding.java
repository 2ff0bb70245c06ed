package feedwitness.watch.drift;

import feedwitness.quantity.PointName;
import feedwitness.watch.diagnosis.Diagnosis;
import java.time.Instant;
import java.util.Locale;

/**
 * Something to be said of a feed line.
 *
 * @param feedLine its name
 * @param stage how much it matters
 * @param start when it began, as well as can be told
 * @param detected when the reading was taken that made it clear
 * @param sizePercent what is delivered over what is normal, less 100 %: −12 is 12 % too little; NaN
 *     where it has no size
 * @param plusMinusPercent half the width within which the size is nearly certain; NaN if unknown
 * @param confidence that it is no play of chance
 * @param diagnosis likely causes and what would decide between them
 * @param words one sentence: item, value, limit, remedy; without times
 */
public record DriftFinding(
    PointName feedLine,
    Kind kind,
    Stage stage,
    Instant start,
    Instant detected,
    double sizePercent,
    double plusMinusPercent,
    Confidence confidence,
    Diagnosis diagnosis,
    String words) {

  /** The same, explained otherwise. */
  DriftFinding judgedAnew(Diagnosis why, String said) {
    return new DriftFinding(
        feedLine,
        kind,
        stage,
        start,
        detected,
        sizePercent,
        plusMinusPercent,
        confidence,
        why,
        said);
  }

  /** What it is. The code is kept and printed: never rename. */
  public enum Kind {
    /** The delivered share changed at once. */
    STEP("step"),
    /** The delivered share changes little by little. */
    RAMP("ramp"),
    /** What is normal here lies off what the configuration expects. */
    OFF_RECIPE("off-recipe"),
    /** The line carries source water. */
    PLAIN_WATER("plain-water"),
    /** Strength differs from event to event. */
    UNSTEADY("unsteady"),
    /** Back to normal. */
    OVER("over"),
    /** A strength that keeps coming back has been learnt. */
    STRENGTH_LEARNT("strength-learnt"),
    /** What is normal has been learnt. */
    LEARNT("learnt"),
    /** Evidence is missing or was set aside; judging goes on with what there is. */
    EVIDENCE("evidence");

    private final String code;

    Kind(String code) {
      this.code = code;
    }

    public String code() {
      return code;
    }

    /** Whether it says that the delivered share has changed. */
    public boolean isDrift() {
      return this == STEP || this == RAMP;
    }
  }

  /** How much it matters, least first. */
  public enum Stage {
    /** For the record and the chart. */
    NOTE,
    /** A change is there, but below the notice limit: for the chart. */
    SEEN,
    /** To be told. */
    NOTICE,
    /** To be answered. */
    ALARM
  }

  /** How sure it is. */
  public enum Confidence {
    SURE,
    LIKELY,
    CANNOT_TELL;

    /** For people. */
    public String words() {
      return this == CANNOT_TELL ? "can't tell" : name().toLowerCase(Locale.ROOT);
    }
  }
}
