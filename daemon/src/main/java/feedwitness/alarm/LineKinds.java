package feedwitness.alarm;

import java.time.Duration;
import java.util.List;

/**
 * Alarms about a feed line; their subject is its name. No delays: what finds them has waited until
 * it was sure.
 */
public final class LineKinds {
  private static final String THREE_TESTS =
      "catch a cup at the line and measure it with the handheld meter; then check the line probe in"
          + " a standard solution; then note how much stock is drawn while a known volume of feed is"
          + " delivered";

  public static final AlarmKind INJECTOR_DRIFT =
      new AlarmKind(
          "injector-drift",
          "Injector drift",
          Priority.MEDIUM,
          "every watering brings other feed than was meant",
          THREE_TESTS,
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind INJECTOR_DRIFT_NOTICE =
      new AlarmKind(
          "injector-drift-notice",
          "Injector drifts a little",
          Priority.NOTICE,
          "it may grow until plants get other feed than was meant",
          THREE_TESTS,
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind PLAIN_WATER =
      new AlarmKind(
          "plain-water",
          "Plain water in the line",
          Priority.NOTICE,
          "plants get no feed",
          "look into the stock barrel and at the suction strainer; then look whether the bypass is"
              + " open or a flush was meant; then catch a cup at the line and measure it with the"
              + " handheld meter",
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind FEED_UNCLEAR =
      new AlarmKind(
          "feed-unclear",
          "Feed other than expected",
          Priority.NOTICE,
          "drift is judged against what may not be right",
          "compare ratio, stock and strengths in the configuration with what is really set; then "
              + THREE_TESTS,
          Duration.ZERO,
          Duration.ZERO);

  /** All of them. */
  public static final List<AlarmKind> ALL =
      List.of(INJECTOR_DRIFT, INJECTOR_DRIFT_NOTICE, PLAIN_WATER, FEED_UNCLEAR);

  private LineKinds() {}
}
