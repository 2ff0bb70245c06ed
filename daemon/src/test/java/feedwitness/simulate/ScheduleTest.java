package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScheduleTest {
  private static String problem(String line) {
    ScheduleException e =
        assertThrows(ScheduleException.class, () -> Schedule.parse("my.schedule", line));
    assertEquals(1, e.problems().size());
    return e.problems().get(0);
  }

  private static void assertSays(String line, String... parts) {
    String problem = problem(line);
    for (String part : parts) {
      assertTrue(problem.contains(part), () -> "'" + part + "' is not in: " + problem);
    }
  }

  @Test
  void readsDayTimeDurationTargetKindAndAmount() {
    Schedule schedule =
        Schedule.parse(
            "t",
            """
            # quiet otherwise
            MON 11:20 +4h injector-sag 12%   # the valve
            sat 09:10 bus unplug +90s
            T+2m line temperature-failure 85 °C +5m
            """);
    assertEquals(
        List.of(
            new Schedule.Entry(
                new Schedule.When.Weekly(DayOfWeek.MONDAY, LocalTime.of(11, 20)),
                new Deed(DeedKind.INJECTOR_SAG, Deed.Target.NURSERY, 12, Duration.ofHours(4))),
            new Schedule.Entry(
                new Schedule.When.Weekly(DayOfWeek.SATURDAY, LocalTime.of(9, 10)),
                new Deed(DeedKind.UNPLUG, Deed.Target.BUS, 0, Duration.ofSeconds(90))),
            new Schedule.Entry(
                new Schedule.When.Once(Duration.ofMinutes(2)),
                new Deed(
                    DeedKind.TEMPERATURE_FAILURE, Deed.Target.LINE, 85, Duration.ofMinutes(5)))),
        schedule.entries());
  }

  @Test
  void setsThePlantsNumbers() {
    Schedule schedule = Schedule.parse("t", "set source-strength 0.72\nset tank-litres 1000");
    assertEquals(0.72, schedule.parameters().get(Parameter.SOURCE_STRENGTH));
    assertEquals(1000, schedule.parameters().get(Parameter.TANK_LITRES));
    assertEquals(80, schedule.parameters().get(Parameter.INJECTOR_RATIO));
  }

  @Test
  void reportsAllFaultyLinesAtOnceWithTheirNumbers() {
    ScheduleException e =
        assertThrows(
            ScheduleException.class,
            () -> Schedule.parse("w", "MON 7:99 batch\n\n# fine\nTUE 08:00 bypass +1h\nXYZ 1"));
    assertEquals(2, e.problems().size());
    assertTrue(e.problems().get(0).startsWith("w:1: '7:99' after MON is not a time of day"));
    assertTrue(e.problems().get(1).startsWith("w:5: 'XYZ' is no day"));
  }

  @Test
  void namesTheRemedy() {
    assertSays("MON 11:20 +4h injektor-sag", "my.schedule:1", "injektor-sag", "injector-sag");
    assertSays("MON 11:20 injector-sag 12%", "needs a duration", "+30m");
    assertSays("MON 11:20 +1h line clean", "at once", "leave the duration out");
    assertSays("MON 11:20 +1h unplug", "cannot happen to nothing", "source, bus");
    assertSays("MON 11:20 +1h tank unplug", "cannot happen to tank");
    assertSays("MON 11:20 +1h line bypass", "happens to the nursery", "leave 'line' out");
    assertSays("MON 11:20 +1h injector-sag 12", "has no unit %");
    assertSays("MON 11:20 +1h injector-sag 400%", "outside 0.1 to 100");
    assertSays("MON 11:20 +1h bypass 5%", "takes no amount");
    assertSays("MON 11:20 +1w bypass", "'+1w' is not a duration");
    assertSays("MON 11:20 +0s bypass", "'+0s' is not a duration");
    assertSays("MON", "is not a time of day");
    assertSays("MON 10:00", "nothing that can happen");
    assertSays("set injector-ratio 5", "outside 10.0 to 500.0", "injector-ratio");
    assertSays("set injector-ratio 1e2", "is not a number");
    assertSays("set colour 5", "cannot be set", "source-strength");
    assertSays("set injector-ratio", "'set' needs a name and a number");
  }

  @Test
  void readsAFile(@TempDir Path dir) throws IOException {
    Path file = dir.resolve("own.schedule");
    Files.writeString(file, "MON 10:00 bypass +1h");
    assertEquals(1, Schedule.read(file).entries().size());
  }
}
