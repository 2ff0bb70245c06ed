package feedwitness.watch.diagnosis;

/**
 * What is known about a drift when its cause is asked for.
 *
 * @param sizePercent what is delivered over what is normal, less 100 %
 * @param gradual whether it came little by little
 * @param plain whether the line carries source water
 * @param sourceKnown whether the source water is measured
 * @param sourceShiftPercent how far the source lies from its usual; NaN if unknown
 * @param plainShiftPercent how far line over source lies from its usual while plain water flows,
 *     since the drift began; NaN if no plain water flowed
 * @param air whether bubbles or air were seen with it
 * @param temperatureShiftKelvin how far line less source lies from its usual while water flows; NaN
 *     if unknown
 * @param sinceFill whether it began with a fresh barrel of stock
 * @param learnt whether strengths are learnt, so that a new one may be meant
 * @param check the last check of the line's probe in a standard since the drift began
 * @param second what a second probe in the same liquid says
 */
public record Evidence(
    double sizePercent,
    boolean gradual,
    boolean plain,
    boolean sourceKnown,
    double sourceShiftPercent,
    double plainShiftPercent,
    boolean air,
    double temperatureShiftKelvin,
    boolean sinceFill,
    boolean learnt,
    Check check,
    Second second) {

  /** A check in a standard. */
  public enum Check {
    NONE,
    PASSED,
    FAILED
  }

  /** A second probe in the same liquid. */
  public enum Second {
    NONE,
    AGREES,
    DISAGREES
  }

  /** With a check that was made meanwhile. */
  public Evidence with(Check made) {
    return new Evidence(
        sizePercent,
        gradual,
        plain,
        sourceKnown,
        sourceShiftPercent,
        plainShiftPercent,
        air,
        temperatureShiftKelvin,
        sinceFill,
        learnt,
        made,
        second);
  }

  /** With what a second probe says. */
  public Evidence with(Second says) {
    return new Evidence(
        sizePercent,
        gradual,
        plain,
        sourceKnown,
        sourceShiftPercent,
        plainShiftPercent,
        air,
        temperatureShiftKelvin,
        sinceFill,
        learnt,
        check,
        says);
  }
}
