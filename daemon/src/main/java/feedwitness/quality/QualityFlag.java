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
  UNDATED(8, "undated", "the clock was not trusted when it came", Quality.UNKNOWN),
  IN_AIR(9, "in-air", "probe reads as if in air, or with a drop held in it", Quality.BAD),
  LOW_HOLD(
      10,
      "low-hold",
      "far below what is usual here, and not settled there: probe partly in air, or other water",
      Quality.SUSPECT),
  SPIKE(11, "spike", "left for a few readings and came back", Quality.SUSPECT),
  ERRATIC(12, "erratic", "jumps about more than liquid can", Quality.SUSPECT),
  STUCK(13, "stuck", "the same number for much longer than this sensor ever gave", Quality.SUSPECT),
  RATE_OF_CHANGE(14, "rate-of-change", "rose faster than mixing can make it", Quality.SUSPECT),
  TEMPERATURE_JUMP(
      15, "temperature-jump", "temperature moved faster than water can", Quality.SUSPECT),
  TEMPERATURE_ERRATIC(
      16, "temperature-erratic", "temperature jumps about more than water can", Quality.SUSPECT),
  TEMPERATURE_STUCK(
      17,
      "temperature-stuck",
      "the same temperature for much longer than this sensor ever gave",
      Quality.SUSPECT),
  TEMPERATURE_UNLIKE_NEIGHBOUR(
      18,
      "temperature-unlike-neighbour",
      "temperature parted from that of the probe beside it",
      Quality.SUSPECT),
  IN_BEAKER(
      19,
      "in-beaker",
      "probe is being checked: the liquid in the beaker, not that of its place",
      Quality.BAD),
  OUT_OF_PLACE(
      20, "out-of-place", "probe was lifted out and hung in something else", Quality.SUSPECT),
  DOUBTED(21, "doubted", "a later check found the probe out of tolerance", Quality.SUSPECT);

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

  /** Its bit alone. */
  long mask() {
    return 1L << bit;
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
