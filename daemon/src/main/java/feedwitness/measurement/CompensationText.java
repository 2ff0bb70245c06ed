package feedwitness.measurement;

/** A compensation as text within a basis. */
final class CompensationText {
  private CompensationText() {}

  static String write(TemperatureCompensation compensation) {
    if (compensation instanceof TemperatureCompensation.Linear linear) {
      return "linear," + BasisText.join(linear.alpha(), linear.alphaStandardUncertainty());
    }
    if (compensation instanceof TemperatureCompensation.Fitted fitted) {
      return "fitted,"
          + fitted.label()
          + ","
          + BasisText.join(
              fitted.perKelvin(),
              fitted.perKelvin2(),
              fitted.perKelvin3(),
              fitted.minCelsius(),
              fitted.maxCelsius(),
              fitted.relativeUncertaintyPerKelvin());
    }
    if (compensation instanceof TemperatureCompensation.NaturalWater) {
      return "iso7888";
    }
    return compensation instanceof TemperatureCompensation.Kcl ? "kcl" : "none";
  }

  /** {@code text} is the whole basis, for messages. */
  static TemperatureCompensation read(String text, String[] words) {
    return switch (words[0]) {
      case "none" -> new TemperatureCompensation.None();
      case "iso7888" -> new TemperatureCompensation.NaturalWater();
      case "kcl" -> new TemperatureCompensation.Kcl();
      case "linear" -> {
        expect(text, words, 3);
        yield new TemperatureCompensation.Linear(
            BasisText.number(text, words[1]), BasisText.number(text, words[2]));
      }
      case "fitted" -> {
        expect(text, words, 8);
        yield new TemperatureCompensation.Fitted(
            words[1],
            BasisText.number(text, words[2]),
            BasisText.number(text, words[3]),
            BasisText.number(text, words[4]),
            BasisText.number(text, words[5]),
            BasisText.number(text, words[6]),
            BasisText.number(text, words[7]));
      }
      default -> throw BasisText.damaged(text, "unknown compensation '" + words[0] + "'");
    };
  }

  private static void expect(String text, String[] words, int count) {
    if (words.length != count) {
      throw BasisText.damaged(
          text, "%s compensation needs %d words after it".formatted(words[0], count - 1));
    }
  }
}
