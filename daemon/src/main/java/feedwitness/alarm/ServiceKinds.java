package feedwitness.alarm;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** Alarms about the service itself; their subject is {@link AlarmKey#SERVICE}. */
public final class ServiceKinds {
  public static final AlarmKind ALARM_FLOOD =
      new AlarmKind(
          "alarm-flood",
          "Many alarms at once",
          Priority.MEDIUM,
          "one alarm that matters is overlooked among the others",
          "look for one common cause first, such as a cable, a power supply or a pump; the single"
              + " alarms stand in the list",
          Duration.ZERO,
          Duration.ZERO);

  public static final AlarmKind UNDATED =
      new AlarmKind(
          "undated",
          "The clock is not known to be right",
          Priority.LOW,
          "readings are kept without a date, and daily schedules do not hold",
          "connect the machine to the network so that its time service can set the clock, or write"
              + " trust = \"always\" under [clock] if the clock is right",
          Duration.ofMinutes(10),
          Duration.ofSeconds(10));

  public static final AlarmKind DISK_NEARLY_FULL =
      new AlarmKind(
          "disk-nearly-full",
          "The disk is nearly full",
          Priority.MEDIUM,
          "recording stops when the free space falls to the floor",
          "remove what is not needed from the disk, or keep single readings for a shorter time with"
              + " keep-raw under [store]",
          Duration.ofMinutes(1),
          Duration.ofMinutes(10));

  public static final AlarmKind RECORDING_STOPPED =
      new AlarmKind(
          "recording-stopped",
          "Readings are not being recorded",
          Priority.HIGH,
          "what is measured now is missing from the history",
          "make room on the disk or replace it, then look at the page's first line; recording"
              + " resumes by itself",
          Duration.ofSeconds(20),
          Duration.ofSeconds(30));

  /** All of them. */
  public static final List<AlarmKind> ALL =
      List.of(ALARM_FLOOD, UNDATED, DISK_NEARLY_FULL, RECORDING_STOPPED);

  private ServiceKinds() {}

  static Condition flood(boolean there, int count) {
    return new Condition(
        AlarmKey.SERVICE,
        ALARM_FLOOD,
        there ? Presence.ACTIVE : Presence.CLEAR,
        count,
        Flood.MOST,
        "alarms",
        "%d alarms within %d min, more than %d"
            .formatted(count, Flood.WINDOW.toMinutes(), Flood.MOST),
        Optional.empty());
  }
}
