package feedwitness.simulate;

import feedwitness.simulate.Schedule.Entry;
import feedwitness.simulate.Schedule.When;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/** Tells which deeds of a schedule begin, second by second; weekly ones come back every week. */
final class Agenda {
  /** {@code again}: the local date and time if weekly; {@code order}: the line, to break ties. */
  private record Due(long second, int order, Deed deed, @Nullable ZonedDateTime again) {}

  private final PriorityQueue<Due> queue =
      new PriorityQueue<>(Comparator.comparingLong(Due::second).thenComparingInt(Due::order));

  Agenda(Schedule schedule, ZoneId zone, Instant start) {
    int order = 0;
    for (Entry entry : schedule.entries()) {
      queue.add(first(entry, order++, start, zone));
    }
  }

  private static Due first(Entry entry, int order, Instant start, ZoneId zone) {
    if (entry.when() instanceof When.Weekly weekly) {
      ZonedDateTime now = start.atZone(zone);
      ZonedDateTime at = now.with(TemporalAdjusters.nextOrSame(weekly.day())).with(weekly.time());
      if (at.isBefore(now)) {
        at = at.plusWeeks(1);
      }
      return new Due(at.toEpochSecond(), order, entry.deed(), at);
    }
    When.Once once = (When.Once) entry.when();
    return new Due(start.plus(once.afterStart()).getEpochSecond(), order, entry.deed(), null);
  }

  /** Deeds that begin at or before this second and were not told yet, in order. */
  List<Deed> due(long second) {
    if (queue.isEmpty() || queue.element().second() > second) {
      return List.of();
    }
    List<Deed> deeds = new ArrayList<>();
    while (!queue.isEmpty() && queue.element().second() <= second) {
      Due due = queue.remove();
      deeds.add(due.deed());
      ZonedDateTime last = due.again();
      if (last != null) {
        ZonedDateTime next = last.plusWeeks(1);
        queue.add(new Due(next.toEpochSecond(), due.order(), due.deed(), next));
      }
    }
    return deeds;
  }
}
