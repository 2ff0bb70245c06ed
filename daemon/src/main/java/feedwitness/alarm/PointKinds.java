package feedwitness.alarm;

import java.time.Duration;
import java.util.List;

/** Alarms about a measuring point, with the defaults the configuration may change. */
public final class PointKinds {
  public static final AlarmKind CONDUCTIVITY_HIGH =
      new AlarmKind(
          "conductivity-high",
          "Strength too high",
          Priority.HIGH,
          "roots of young or dry plants take harm",
          "stop feeding, measure by hand to be sure, then check the injector ratio and the stock"
              + " strength; water plants that were fed with plain water",
          Duration.ofSeconds(60),
          Duration.ofSeconds(60));

  public static final AlarmKind CONDUCTIVITY_LOW =
      new AlarmKind(
          "conductivity-low",
          "Strength too low",
          Priority.MEDIUM,
          "plants get less feed than they should",
          "check that the stock barrel is not empty, that its suction tube is under the surface, and"
              + " that the bypass is closed; then check the injector ratio",
          Duration.ofSeconds(60),
          Duration.ofSeconds(60));

  public static final AlarmKind TEMPERATURE_HIGH =
      new AlarmKind(
          "temperature-high",
          "Solution too warm",
          Priority.LOW,
          "roots lack oxygen, and readings far from 25 °C are less certain",
          "shade the tank or the pipe, or let what stands in the pipe run off",
          Duration.ofMinutes(5),
          Duration.ofMinutes(5));

  public static final AlarmKind TEMPERATURE_LOW =
      new AlarmKind(
          "temperature-low",
          "Solution too cold",
          Priority.LOW,
          "plants take up less, pipes may freeze",
          "water later in the day or warm the tank; protect pipes and probe from frost",
          Duration.ofMinutes(5),
          Duration.ofMinutes(5));

  public static final AlarmKind NO_DATA =
      new AlarmKind(
          "no-data",
          "No readings",
          Priority.MEDIUM,
          "nobody watches the strength here",
          "check the probe's cable and power; `feedwitness ports` shows which cables are seen",
          Duration.ofSeconds(60),
          Duration.ofSeconds(10));

  public static final AlarmKind IN_AIR =
      new AlarmKind(
          "in-air",
          "Probe in air",
          Priority.MEDIUM,
          "the strength is not measured here",
          "look whether the pipe or tank has run dry; otherwise put the probe back under the surface"
              + " and free it of bubbles",
          Duration.ofMinutes(2),
          Duration.ofSeconds(30));

  public static final AlarmKind INSTRUMENT_FAULT =
      new AlarmKind(
          "instrument-fault",
          "Instrument at fault",
          Priority.MEDIUM,
          "readings here cannot be relied on",
          "look at the instrument and its cable; compare with a hand-held meter before you rely on"
              + " what is shown",
          Duration.ofMinutes(2),
          Duration.ofMinutes(2));

  /** All of them. */
  public static final List<AlarmKind> ALL =
      List.of(
          CONDUCTIVITY_HIGH,
          CONDUCTIVITY_LOW,
          TEMPERATURE_HIGH,
          TEMPERATURE_LOW,
          NO_DATA,
          IN_AIR,
          INSTRUMENT_FAULT);

  private PointKinds() {}
}
