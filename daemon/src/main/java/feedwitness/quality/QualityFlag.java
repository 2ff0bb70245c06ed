package feedwitness.quality;

/** Something a quality test has to say about a measurement. */
public enum QualityFlag {
  MISSING(0, "missing", "no reading", Quality.BAD),
  RANGE(1, "outside-rated-range", "outside what the instrument is rated for", Quality.SUSPECT),
  BOTH_ZERO(
      2, "both-zero", "conductivity and temperature are both zero: dead bus or probe", Quality.BAD),
  TEMPERATURE_IMPOSSIBLE(3, "temperature-impossible", "temperature cannot be right", Quality.BAD),
  TEMPERATURE_MISSING(
      4, "temperature-missing", "no temperature: not referred to 25 °C", Quality.SUSPECT),
  TEMPERATURE_OUTSIDE_COMPENSATION(
      5,
      "temperature-outside-compensation",
      "temperature is outside what the compensation covers",
      Quality.SUSPECT),
  CONDUCTIVITY_MISSING(6, "conductivity-missing", "no conductivity in the message", Quality.BAD),
  UNKNOWN(7, "unknown", "too little evidence to judge", Quality.UNKNOWN),
  UNDATED(8, "undated", "the clock was not trusted when it came", Quality.UNKNOWN);

  private final int bit;
  private final String code;
  private final String words;
  private final Quality quality;

  QualityFlag(int bit, String code, String words, Quality quality) {
    this.bit = bit;
    this.code = code;
    this.words = words;
    this.quality = quality;
  }

  /** Position in the store's bit set; never reused. */
  int bit() {
    return bit;
  }

  /** Stable name towards the outside. */
  public String code() {
    return code;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** What the flag makes of the measurement. */
  public Quality quality() {
    return quality;
  }
}
