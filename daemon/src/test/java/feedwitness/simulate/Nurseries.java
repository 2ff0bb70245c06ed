package feedwitness.simulate;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/** Nurseries and instants the tests of this room share. */
final class Nurseries {
  static final ZoneId ZONE = ZoneId.of("Europe/London");

  /** Monday in June, before the day's work. */
  static final Instant MONDAY = local(16, 6, 0);

  private Nurseries() {}

  /** A local time in June 2025; the 16th is a Monday. */
  static Instant local(int day, int hour, int minute) {
    return ZonedDateTime.of(2025, 6, day, hour, minute, 0, 0, ZONE).toInstant();
  }

  static Nursery with(long seed, Schedule schedule, Instant start) {
    return new Nursery(new NurseryOptions(seed, ZONE, schedule), start);
  }

  static Nursery quiet(Instant start) {
    return with(11, Schedule.quiet(), start);
  }

  /** Steps on until water flows in the line and has flowed for a minute. */
  static Truth watering(Nursery nursery) {
    int flowing = 0;
    for (int i = 0; i < 86_400 && flowing < 60; i++) {
      nursery.step();
      flowing = nursery.truth().feed().flow() > 0 ? flowing + 1 : 0;
    }
    return nursery.truth();
  }

  static void seconds(Nursery nursery, int seconds) {
    nursery.advanceTo(nursery.now().plusSeconds(seconds));
  }
}
