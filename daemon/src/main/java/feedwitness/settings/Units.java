package feedwitness.settings;

import feedwitness.quantity.ConductivityUnit;
import java.util.Locale;
import java.util.Optional;

/** Units of conductivity in TOML, with help for what is none. */
final class Units {
  private Units() {}

  static Optional<ConductivityUnit> conductivity(Section section, String key) {
    Optional<String> text = section.text(key);
    Optional<ConductivityUnit> unit = text.flatMap(ConductivityUnit::parse);
    if (text.isPresent() && unit.isEmpty()) {
      boolean salts = text.get().toLowerCase(Locale.ROOT).matches(".*(ppm|tds|mg/l).*");
      section.problem(
          key,
          "%s '%s' is no unit of conductivity".formatted(key, Values.clip(text.get())),
          salts
              ? "set the instrument to mS/cm or µS/cm: ppm hides a factor of 500, 640 or 700"
              : "write one of " + Words.conductivityUnits());
    }
    return unit;
  }
}
