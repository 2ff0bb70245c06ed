package feedwitness.settings;

import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A point as it was set up on the page.
 *
 * @param probe empty for a point whose readings are typed in
 */
public record GeneratedPoint(
    PointName name,
    String title,
    MeasuringPoint.Place place,
    Optional<Probe> probe,
    CompensationChoice compensation) {

  /**
   * Its probe.
   *
   * @param port path or {@code tcp:HOST:PORT}
   * @param profile name of a device profile
   * @param unit Modbus address, 1 to 247; 0 where the profile takes none
   * @param conductivityUnit symbol; empty for the profile's own
   * @param compensates whether the instrument refers to 25 °C; empty for what the profile says
   */
  public record Probe(
      String port,
      String profile,
      int unit,
      Optional<String> conductivityUnit,
      Optional<Boolean> compensates) {}

  /** Keys and values as they stand in the file, in order. */
  Map<String, Object> entries() {
    Map<String, Object> entries = new LinkedHashMap<>();
    entries.put("name", name.text());
    entries.put("title", title);
    entries.put("place", PointReader.placeWord(place));
    probe.ifPresent(
        p -> {
          entries.put("port", p.port());
          entries.put("profile", p.profile());
          if (p.unit() != 0) {
            entries.put("unit", (long) p.unit());
          }
          p.conductivityUnit().ifPresent(unit -> entries.put("conductivity-unit", unit));
          p.compensates().ifPresent(yes -> entries.put("instrument-compensates", yes));
        });
    entries.put("compensation", CompensationReader.word(compensation));
    if (compensation instanceof CompensationChoice.Linear linear) {
      entries.put("percent-per-kelvin", linear.percentPerKelvin());
    }
    return entries;
  }
}
