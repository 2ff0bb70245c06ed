package feedwitness.engine;

import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.Condition;
import feedwitness.alarm.Presence;
import feedwitness.alarm.ServiceKinds;
import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** What is wrong with the service itself. Not for several threads. */
final class ServiceConditions {
  private static final long DISK_LOOK_NANOS = Duration.ofSeconds(10).toNanos();

  /** Nearly full: twice the floor; over again a tenth above that. */
  private static final double NEARLY_FULL = 2;

  private static final double ROOMY = 2.2;
  private static final double MEGA = 1e6;

  private final ServiceState service;
  private final BooleanSupplier dates;
  private long diskLookedNanos = Long.MIN_VALUE;

  /** {@code dates}: whether the clock is trusted now. */
  ServiceConditions(ServiceState service, BooleanSupplier dates) {
    this.service = service;
    this.dates = dates;
  }

  List<Condition> at(Stamp now) {
    List<Condition> conditions = new ArrayList<>();
    conditions.add(
        Condition.plain(
            AlarmKey.SERVICE,
            ServiceKinds.UNDATED,
            dates.getAsBoolean() ? Presence.CLEAR : Presence.ACTIVE,
            "the clock of the machine is not known to be right"));
    Optional<String> halted = service.halted().get();
    conditions.add(
        Condition.plain(
            AlarmKey.SERVICE,
            ServiceKinds.RECORDING_STOPPED,
            halted.isPresent() ? Presence.ACTIVE : Presence.CLEAR,
            halted.orElse("readings are recorded")));
    if (diskLookedNanos == Long.MIN_VALUE
        || now.monotonicNanos() - diskLookedNanos >= DISK_LOOK_NANOS) {
      diskLookedNanos = now.monotonicNanos();
      conditions.add(disk());
    }
    return conditions;
  }

  private Condition disk() {
    double free = service.freeOctets().getAsLong();
    double floor = service.floorOctets();
    Presence roomy = free > ROOMY * floor ? Presence.CLEAR : Presence.UNKNOWN;
    return new Condition(
        AlarmKey.SERVICE,
        ServiceKinds.DISK_NEARLY_FULL,
        free < NEARLY_FULL * floor ? Presence.ACTIVE : roomy,
        Math.rint(free / MEGA),
        NEARLY_FULL * floor / MEGA,
        "MB",
        String.format(
            Locale.ROOT,
            "the disk has %.0f MB left, less than %.0f MB; recording stops below %.0f MB",
            free / MEGA,
            NEARLY_FULL * floor / MEGA,
            floor / MEGA),
        Optional.empty());
  }
}
