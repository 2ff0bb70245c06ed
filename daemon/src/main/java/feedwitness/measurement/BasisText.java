package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;
import java.util.HashMap;
import java.util.Map;

/**
 * A basis as one line of text, {@code key=value} separated by {@code ;}. Exact: doubles round-trip.
 */
final class BasisText {
  private BasisText() {}

  static String write(Basis basis) {
    InstrumentLimits limits = basis.limits();
    return "rules=%d;profile=%s;at25=%s;calibration=%s;compensation=%s;limits=%s"
        .formatted(
            basis.rules(),
            basis.profile(),
            basis.indicatedAt25(),
            write(basis.calibration()),
            CompensationText.write(basis.compensation()),
            join(
                limits.minMilliSiemensPerCm(),
                limits.maxMilliSiemensPerCm(),
                limits.minCelsius(),
                limits.maxCelsius(),
                limits.resolutionMilliSiemensPerCm(),
                limits.accuracyPercent(),
                limits.temperatureAccuracyKelvin(),
                limits.repeatabilityPercent()));
  }

  private static String write(CalibrationCurve curve) {
    if (curve instanceof CalibrationCurve.Linear linear) {
      return "linear,"
          + join(
              linear.slope(),
              linear.offsetMilliSiemensPerCm(),
              linear.slopeStandardUncertainty(),
              linear.offsetStandardUncertainty(),
              linear.correlation());
    }
    return "identity";
  }

  static String join(double... numbers) {
    StringBuilder text = new StringBuilder();
    for (double number : numbers) {
      text.append(text.isEmpty() ? "" : ",").append(number);
    }
    return text.toString();
  }

  static Basis read(String text) {
    Map<String, String> parts = new HashMap<>();
    for (String part : text.split(";", -1)) {
      int equals = part.indexOf('=');
      if (equals < 0) {
        throw damaged(text, "'" + part + "' is no key=value");
      }
      parts.put(part.substring(0, equals), part.substring(equals + 1));
    }
    int rules = (int) number(text, get(text, parts, "rules"));
    if (rules > Basis.RULES) {
      throw damaged(text, "rules " + rules + " are newer than this program's " + Basis.RULES);
    }
    return new Basis(
        rules,
        get(text, parts, "profile"),
        Boolean.parseBoolean(get(text, parts, "at25")),
        calibration(text, get(text, parts, "calibration").split(",", -1)),
        CompensationText.read(text, get(text, parts, "compensation").split(",", -1)),
        limits(text, get(text, parts, "limits").split(",", -1)));
  }

  /** Rules 1 wrote seven numbers: no repeatability. */
  private static InstrumentLimits limits(String text, String[] words) {
    if (words.length != 7 && words.length != 8) {
      throw damaged(text, "limits are not 7 or 8 numbers");
    }
    return new InstrumentLimits(
        number(text, words[0]),
        number(text, words[1]),
        number(text, words[2]),
        number(text, words[3]),
        number(text, words[4]),
        number(text, words[5]),
        number(text, words[6]),
        words.length == 8 ? number(text, words[7]) : Double.NaN);
  }

  /** Rules 1 wrote slope and offset alone. */
  private static CalibrationCurve calibration(String text, String[] words) {
    if (words[0].equals("linear") && words.length == 3) {
      return new CalibrationCurve.Linear(number(text, words[1]), number(text, words[2]));
    }
    if (words[0].equals("linear") && words.length == 6) {
      return new CalibrationCurve.Linear(
          number(text, words[1]),
          number(text, words[2]),
          number(text, words[3]),
          number(text, words[4]),
          number(text, words[5]));
    }
    if (words[0].equals("identity")) {
      return new CalibrationCurve.Identity();
    }
    throw damaged(text, "unknown calibration '" + words[0] + "'");
  }

  private static String get(String text, Map<String, String> parts, String key) {
    String value = parts.get(key);
    if (value == null) {
      throw damaged(text, key + " is missing");
    }
    return value;
  }

  static double number(String text, String word) {
    try {
      return Double.parseDouble(word);
    } catch (NumberFormatException e) {
      throw damaged(text, "'" + word + "' is no number");
    }
  }

  static IllegalArgumentException damaged(String text, String why) {
    return new IllegalArgumentException("basis '%s' cannot be used: %s".formatted(text, why));
  }
}
