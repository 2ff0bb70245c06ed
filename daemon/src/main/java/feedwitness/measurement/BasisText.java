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
            write(basis.compensation()),
            join(
                limits.minMilliSiemensPerCm(),
                limits.maxMilliSiemensPerCm(),
                limits.minCelsius(),
                limits.maxCelsius(),
                limits.resolutionMilliSiemensPerCm(),
                limits.accuracyPercent(),
                limits.temperatureAccuracyKelvin()));
  }

  private static String write(CalibrationCurve curve) {
    if (curve instanceof CalibrationCurve.Linear linear) {
      return "linear," + join(linear.slope(), linear.offsetMilliSiemensPerCm());
    }
    return "identity";
  }

  private static String write(TemperatureCompensation compensation) {
    if (compensation instanceof TemperatureCompensation.Linear linear) {
      return "linear," + join(linear.alpha(), linear.alphaStandardUncertainty());
    }
    if (compensation instanceof TemperatureCompensation.NaturalWater) {
      return "iso7888";
    }
    return compensation instanceof TemperatureCompensation.Kcl ? "kcl" : "none";
  }

  private static String join(double... numbers) {
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
    String[] limits = get(text, parts, "limits").split(",", -1);
    if (limits.length != 7) {
      throw damaged(text, "limits are not 7 numbers");
    }
    return new Basis(
        rules,
        get(text, parts, "profile"),
        Boolean.parseBoolean(get(text, parts, "at25")),
        calibration(text, get(text, parts, "calibration").split(",", -1)),
        compensation(text, get(text, parts, "compensation").split(",", -1)),
        new InstrumentLimits(
            number(text, limits[0]),
            number(text, limits[1]),
            number(text, limits[2]),
            number(text, limits[3]),
            number(text, limits[4]),
            number(text, limits[5]),
            number(text, limits[6])));
  }

  private static CalibrationCurve calibration(String text, String[] words) {
    if (words[0].equals("linear") && words.length == 3) {
      return new CalibrationCurve.Linear(number(text, words[1]), number(text, words[2]));
    }
    if (words[0].equals("identity")) {
      return new CalibrationCurve.Identity();
    }
    throw damaged(text, "unknown calibration '" + words[0] + "'");
  }

  private static TemperatureCompensation compensation(String text, String[] words) {
    if (words[0].equals("linear") && words.length != 3) {
      throw damaged(text, "linear compensation needs two numbers");
    }
    return switch (words[0]) {
      case "none" -> new TemperatureCompensation.None();
      case "iso7888" -> new TemperatureCompensation.NaturalWater();
      case "kcl" -> new TemperatureCompensation.Kcl();
      case "linear" ->
          new TemperatureCompensation.Linear(number(text, words[1]), number(text, words[2]));
      default -> throw damaged(text, "unknown compensation '" + words[0] + "'");
    };
  }

  private static String get(String text, Map<String, String> parts, String key) {
    String value = parts.get(key);
    if (value == null) {
      throw damaged(text, key + " is missing");
    }
    return value;
  }

  private static double number(String text, String word) {
    try {
      return Double.parseDouble(word);
    } catch (NumberFormatException e) {
      throw damaged(text, "'" + word + "' is no number");
    }
  }

  private static IllegalArgumentException damaged(String text, String why) {
    return new IllegalArgumentException("basis '%s' cannot be used: %s".formatted(text, why));
  }
}
