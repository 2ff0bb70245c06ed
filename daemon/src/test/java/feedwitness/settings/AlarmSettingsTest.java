package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.LineKinds;
import feedwitness.alarm.PointKinds;
import feedwitness.alarm.ServiceKinds;
import feedwitness.check.CheckKinds;
import feedwitness.quantity.PointName;
import feedwitness.site.AlarmRule;
import feedwitness.site.Band;
import feedwitness.site.PointLimits;
import feedwitness.site.Site;
import feedwitness.site.Strength;
import feedwitness.site.StrengthOf;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits, strengths and rules of alarms, right and wrong. */
class AlarmSettingsTest {
  /** Lines 5 to 7; what follows begins on line 8. */
  private static final String LINE = "[[point]]\nname = \"line\"\nplace = \"line\"\n";

  private static final String SOURCE = "[[point]]\nname = \"source\"\nplace = \"source\"\n";

  @TempDir private Path folder;

  private Site site(String text) {
    return new Desk(folder).right(Desk.NURSERY + text).config().site();
  }

  private void fault(String text, String place, String... words) {
    new Desk(folder).fault(Desk.NURSERY + text, place, words);
  }

  @Test
  void readsLimitsInAnyUnit() {
    PointLimits limits =
        site(LINE
                + """
                    conductivity-low = "1300 µS/cm"
                    conductivity-high = "17 CF"
                    conductivity-deadband = "0.1 mS/cm"
                    limits-on = "added"
                    source = "source"
                    temperature-high = 30
                    plain-water-days = "Wednesday, sunday"
                    """
                + SOURCE)
            .points()
            .get(0)
            .limits();
    assertEquals(1.3, limits.conductivity().low(), 1e-9);
    assertEquals(1.7, limits.conductivity().high(), 1e-9);
    assertEquals(StrengthOf.ADDED, limits.of());
    assertEquals(Optional.of(new PointName("source")), limits.source());
    assertTrue(Double.isNaN(limits.temperature().low()));
    assertEquals(30, limits.temperature().high());
    assertEquals(Set.of(DayOfWeek.WEDNESDAY, DayOfWeek.SUNDAY), limits.plainWaterDays());
  }

  @Test
  void setsNoLimitsUnlessTold() {
    Band band = site(LINE).points().get(0).limits().conductivity();
    assertTrue(band.isEmpty());
  }

  @Test
  void findsTheOnlySource() {
    Site site = site(LINE + SOURCE);
    assertEquals(Optional.of(new PointName("source")), site.sourceOf(site.points().get(0)));
    assertEquals(Optional.empty(), site.sourceOf(site.points().get(1)));
  }

  @Test
  void refusesALimitBelowItsDeadband() {
    fault(
        LINE + "conductivity-high = \"0.04 mS/cm\"\n",
        "8:1",
        "conductivity-high 0.04 mS/cm is not above its deadband 0.05 mS/cm",
        "smaller conductivity-deadband");
    fault(
        LINE + "conductivity-low = \"0.3 mS/cm\"\nconductivity-deadband = \"0.3 mS/cm\"\n",
        "8:1",
        "conductivity-low 0.3 mS/cm is not above its deadband 0.3 mS/cm");
  }

  @Test
  void refusesLimitsThatOverlap() {
    fault(
        LINE + "conductivity-low = \"1.5 mS/cm\"\nconductivity-high = \"1.52 mS/cm\"\n",
        "9:1",
        "1.52 mS/cm is not more than the deadband 0.05 above conductivity-low 1.5 mS/cm");
    fault(
        LINE + "temperature-low = 30\ntemperature-high = 5\n",
        "9:1",
        "temperature-high 5 °C",
        "temperature-deadband");
  }

  @Test
  void refusesLimitsWithoutUnitAndDaysThatAreNone() {
    fault(LINE + "conductivity-low = 1.3\n", "8:1", "a number, not text", "with its unit");
    fault(LINE + "conductivity-low = \"0 mS/cm\"\n", "8:1", "not above 0");
    fault(LINE + "temperature-low = -40\n", "8:1", "outside -5 to 60 °C");
    fault(LINE + "plain-water-days = \"sunday, funday\"\n", "8:1", "'funday' is no day");
    fault(LINE + "limits-on = \"feed\"\n", "8:1", "total, added");
    fault(LINE + "source = \"sorce\"\n" + SOURCE, "8:1", "no point 'sorce'", "mean 'source'?");
  }

  @Test
  void readsStrengths() {
    Strength strength =
        site(LINE
                + """
                    [[strength]]
                    name = "growing-on"
                    title = "Growing on"
                    point = "line"
                    conductivity = "1.04 mS/cm"
                    of = "added"
                    tolerance = "0.12 mS/cm"
                    """)
            .strengths()
            .get(0);
    assertEquals(
        new Strength(
            "growing-on",
            "Growing on",
            Optional.of(new PointName("line")),
            1.04,
            StrengthOf.ADDED,
            0.12),
        strength);
  }

  @Test
  void refusesStrengthsThatMakeNoSense() {
    String begin = LINE + "[[strength]]\nname = \"low\"\n";
    fault(begin, "8:1", "strength 'low'", "'conductivity' is missing");
    fault(
        begin + "conductivity = \"0.1 mS/cm\"\n",
        "10:1",
        "strength 0.1 mS/cm is not above its tolerance 0.15 mS/cm");
    fault(
        begin + "conductivity = \"1 mS/cm\"\npoint = \"pond\"\n",
        "11:1",
        "there is no point 'pond'");
    fault(
        begin
            + "conductivity = \"1 mS/cm\"\n[[strength]]\nname = \"low\"\nconductivity = \"2 mS/cm\"\n",
        "12:1",
        "another strength has this name");
  }

  @Test
  void readsRulesOfAlarms() {
    assertEquals(
        List.of(
            new AlarmRule(
                "in-air",
                Optional.of(new PointName("line")),
                Optional.of(AlarmRule.Urgency.OFF),
                Optional.of(Duration.ofMinutes(10)),
                Optional.empty())),
        site(LINE
                + """
                    [[alarm]]
                    kind = "in-air"
                    point = "line"
                    priority = "off"
                    on-delay = "10min"
                    """)
            .rules());
  }

  @Test
  void refusesRulesThatMakeNoSense() {
    fault(LINE + "[[alarm]]\nkind = \"no-date\"\n", "9:1", "did you mean 'no-data'?");
    fault(
        LINE + "[[alarm]]\nkind = \"no-data\"\npriority = \"urgent\"\n", "10:1", "not one of off");
    fault(LINE + "[[alarm]]\nkind = \"no-data\"\non-delay = \"2d\"\n", "10:1", "outside 0ms to 1d");
  }

  @Test
  void knowsTheKindsThereAre() {
    Set<String> kinds = new TreeSet<>();
    Stream.of(PointKinds.ALL, LineKinds.ALL, CheckKinds.ALL, ServiceKinds.ALL)
        .flatMap(List::stream)
        .map(AlarmKind::code)
        .forEach(kinds::add);
    assertEquals(kinds, new TreeSet<>(AlarmRule.KINDS));
  }
}
