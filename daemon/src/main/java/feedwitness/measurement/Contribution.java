package feedwitness.measurement;

/**
 * One line of an uncertainty budget (JCGM 100, 4.3 and 5.1). The contribution is value ÷ divisor ×
 * sensitivity.
 *
 * @param value as stated, in {@code unit}; NaN if nothing is known of it, 0 if it does not apply
 * @param unit of the value
 * @param distribution what the value is: a standard uncertainty or the width of a rectangle
 * @param sensitivity change of the conductivity at 25 °C with the quantity, with its sign
 * @param sensitivityUnit mS/cm by the unit of the value
 * @param milliSiemensPerCm contribution to the standard uncertainty at 25 °C, mS/cm, with the sign
 *     of the sensitivity
 * @param assumed whether the value is ours because the maker states none
 */
public record Contribution(
    Source source,
    double value,
    String unit,
    Distribution distribution,
    double sensitivity,
    String sensitivityUnit,
    double milliSiemensPerCm,
    boolean assumed) {

  /** Where doubt comes from. */
  public enum Source {
    INSTRUMENT("the instrument’s stated accuracy"),
    CALIBRATION("the calibration"),
    TEMPERATURE_SENSOR("the temperature sensor"),
    COMPENSATION("the compensation to 25 °C"),
    RESOLUTION("the instrument’s resolution"),
    NOISE("scatter from reading to reading");

    private final String words;

    Source(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  /** What a stated value says, and what it is divided by for the standard uncertainty. */
  public enum Distribution {
    /** The value is a standard uncertainty. */
    NORMAL("standard uncertainty", 1),
    /** The value is a half-width, any error within it equally likely (JCGM 100, 4.3.7). */
    RECTANGULAR("± limits, rectangular", Math.sqrt(3)),
    /** The value is a full width: a smallest step (JCGM 100, F.2.2.1). */
    STEP("whole step, rectangular", Math.sqrt(12));

    private final String words;
    private final double divisor;

    Distribution(String words, double divisor) {
      this.words = words;
      this.divisor = divisor;
    }

    /** For people. */
    public String words() {
      return words;
    }

    /** From the stated value to a standard uncertainty. */
    public double divisor() {
      return divisor;
    }
  }
}
