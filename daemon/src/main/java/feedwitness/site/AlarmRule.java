package feedwitness.site;

import feedwitness.quantity.PointName;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * How alarms of a kind are to be otherwise than usual.
 *
 * @param kind one of {@link #KINDS}
 * @param point only there; empty for everywhere
 * @param urgency empty for the usual
 * @param onDelay how long the condition must be there; empty for the usual
 * @param offDelay how long it must be gone; empty for the usual
 */
public record AlarmRule(
    String kind,
    Optional<PointName> point,
    Optional<Urgency> urgency,
    Optional<Duration> onDelay,
    Optional<Duration> offDelay) {
  /** Codes of the kinds there are; a test holds them against {@code alarm}. */
  public static final List<String> KINDS =
      List.of(
          "conductivity-high",
          "conductivity-low",
          "temperature-high",
          "temperature-low",
          "no-data",
          "in-air",
          "instrument-fault",
          "check-due",
          "check-overdue",
          "check-failed",
          "probe-losing",
          "probe-out-of-place",
          "injector-drift",
          "injector-drift-notice",
          "plain-water",
          "feed-unclear",
          "undated",
          "disk-nearly-full",
          "recording-stopped",
          "alarm-flood");

  /** How soon somebody must answer. */
  public enum Urgency {
    /** There is no such alarm. */
    OFF,
    NOTICE,
    LOW,
    MEDIUM,
    HIGH
  }
}
