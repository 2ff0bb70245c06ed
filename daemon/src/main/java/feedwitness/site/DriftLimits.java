package feedwitness.site;

/**
 * From when a feed line's drift is worth saying.
 *
 * @param noticePercent size from which a notice is given, % of what is normal; 1 to 50
 * @param alarmPercent size from which an alarm is raised, %; above the notice, at most 80
 * @param falseAlarms how often chance alone may raise a finding
 */
public record DriftLimits(double noticePercent, double alarmPercent, FalseAlarms falseAlarms) {
  /** Injectors commonly wander 5 %. */
  public static final DriftLimits USUAL = new DriftLimits(5, 10, FalseAlarms.MONTH);

  public static final double LEAST_PERCENT = 1;
  public static final double MOST_NOTICE_PERCENT = 50;
  public static final double MOST_ALARM_PERCENT = 80;

  /** How often chance alone may raise a finding. */
  public enum FalseAlarms {
    MONTH("about one a month", 30),
    SEASON("about one a season", 120);

    private final String words;
    private final int days;

    FalseAlarms(String words, int days) {
      this.words = words;
      this.days = days;
    }

    /** As written in the configuration. */
    public String words() {
      return words;
    }

    /** Days between two of them, on average. */
    public int days() {
      return days;
    }
  }

  /**
   * Checks the limits against each other.
   *
   * @throws IllegalArgumentException saying which is outside what
   */
  public DriftLimits {
    if (!(noticePercent >= LEAST_PERCENT && noticePercent <= MOST_NOTICE_PERCENT)) {
      throw new IllegalArgumentException(
          "notice from %s %% is outside %s to %s %%; 5 %% suits most injectors"
              .formatted(noticePercent, LEAST_PERCENT, MOST_NOTICE_PERCENT));
    }
    if (!(alarmPercent > noticePercent && alarmPercent <= MOST_ALARM_PERCENT)) {
      throw new IllegalArgumentException(
          "alarm from %s %% must be above the notice from %s %% and at most %s %%; 10 %% is usual"
              .formatted(alarmPercent, noticePercent, MOST_ALARM_PERCENT));
    }
  }
}
