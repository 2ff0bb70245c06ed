package feedwitness.check;

/**
 * One line of the uncertainty of an error found in a standard (JCGM 100).
 *
 * @param source where it comes from
 * @param standardPercent standard uncertainty, % of the reference, ≥ 0
 * @param assumed whether the figure is ours because nothing is stated
 */
public record Doubt(Source source, double standardPercent, boolean assumed) {

  /** Where doubt about an error comes from. */
  public enum Source {
    CERTIFICATE("the bottle's certificate"),
    COURSE("what the standard conducts at its temperature"),
    TEMPERATURE("the probe's temperature sensor"),
    THERMOMETER("the thermometer in the beaker"),
    COMPENSATION("the instrument's own compensation"),
    RESOLUTION("the instrument's resolution"),
    SCATTER("scatter of the readings"),
    SETTLING("movement left when it had settled"),
    RINSE("what rinsing left behind");

    private final String words;

    Source(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }

    /** Whether one and the same error is in both standards of a check. */
    boolean common() {
      return this == TEMPERATURE || this == THERMOMETER || this == COMPENSATION;
    }
  }
}
