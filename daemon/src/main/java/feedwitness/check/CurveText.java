package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;

/** A calibration curve as one field. */
final class CurveText {
  private static final String IDENTITY = "identity";

  private CurveText() {}

  static String write(CalibrationCurve curve) {
    return curve instanceof CalibrationCurve.Linear it
        ? String.join(
            " ",
            Double.toString(it.slope()),
            Double.toString(it.offsetMilliSiemensPerCm()),
            Double.toString(it.slopeStandardUncertainty()),
            Double.toString(it.offsetStandardUncertainty()),
            Double.toString(it.correlation()))
        : IDENTITY;
  }

  static CalibrationCurve read(String text) {
    if (text.equals(IDENTITY)) {
      return new CalibrationCurve.Identity();
    }
    String[] words = text.split(" ", -1);
    if (words.length != 5) {
      throw new IllegalArgumentException("'%s' is no calibration curve".formatted(text));
    }
    return new CalibrationCurve.Linear(
        Double.parseDouble(words[0]),
        Double.parseDouble(words[1]),
        Double.parseDouble(words[2]),
        Double.parseDouble(words[3]),
        Double.parseDouble(words[4]));
  }

  /** For people. */
  static String words(CalibrationCurve curve) {
    return curve instanceof CalibrationCurve.Linear it
        ? "slope %s, offset %s mS/cm"
            .formatted(Say.number(it.slope(), 5), Say.number(it.offsetMilliSiemensPerCm(), 3))
        : "as the instrument says";
  }
}
