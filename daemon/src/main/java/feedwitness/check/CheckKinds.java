package feedwitness.check;

import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.Priority;
import java.time.Duration;
import java.util.List;

/** Alarms and notices about checks, with the defaults the configuration may change. */
public final class CheckKinds {
  public static final AlarmKind DUE =
      new AlarmKind(
          "check-due",
          "Check due",
          Priority.NOTICE,
          "how far off the probe is becomes less certain by the day",
          "check it in two standards when you next pass by",
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind OVERDUE =
      new AlarmKind(
          "check-overdue",
          "Check overdue",
          Priority.LOW,
          "nobody knows how far off the readings here are",
          "check it in two standards today",
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind FAILED =
      new AlarmKind(
          "check-failed",
          "Probe left out of tolerance",
          Priority.MEDIUM,
          "strengths shown here are off by what the check found",
          "clean it and check again; adjust it if it still fails; replace it if that is refused",
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind LOSING =
      new AlarmKind(
          "probe-losing",
          "Probe slowly loses",
          Priority.LOW,
          "readings fall while the feed does not, and feeding after them makes it too strong",
          "clean the probe and check it; look for lime or algae",
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind OUT_OF_PLACE =
      new AlarmKind(
          "probe-out-of-place",
          "Probe out of its place",
          Priority.MEDIUM,
          "nobody watches the strength here",
          "put the probe back where it belongs; begin a check first if that is what you are doing",
          Duration.ofMinutes(2),
          Duration.ZERO);

  /** All of them. */
  public static final List<AlarmKind> ALL = List.of(DUE, OVERDUE, FAILED, LOSING, OUT_OF_PLACE);

  private CheckKinds() {}
}
