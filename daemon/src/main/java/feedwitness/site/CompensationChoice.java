package feedwitness.site;

/** How readings of a point are referred to 25 °C. */
public sealed interface CompensationChoice {

  /** Not at all: the reading is shown as it is at its own temperature. */
  record None() implements CompensationChoice {}

  /** Linear; default 1.88 %/K at 25 °C suits nitrate feeds (standard uncertainty 0.06 %/K). */
  record Linear(double percentPerKelvin) implements CompensationChoice {
    public static final double FEED_PERCENT_PER_KELVIN = 1.88;
  }

  /** ISO 7888: natural waters of the calcium bicarbonate type. */
  record Iso7888() implements CompensationChoice {}

  /** Potassium chloride: for standard solutions. */
  record Kcl() implements CompensationChoice {}
}
