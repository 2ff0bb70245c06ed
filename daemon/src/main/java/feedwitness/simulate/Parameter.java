package feedwitness.simulate;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a nursery file may {@code set}: name, unit, default and valid range. */
enum Parameter {
  SOURCE_STRENGTH("source-strength", "mS/cm at 25 °C", 0.46, 0.02, 3),
  TANK_LITRES("tank-litres", "L", 600, 50, 5000),
  TANK_STRENGTH("tank-strength", "mS/cm at 25 °C", 1.50, 0.1, 5),
  TANK_PUMP("tank-pump", "L/min", 25, 1, 200),
  TANK_WEIGHING("tank-weighing-error", "%", 1, 0, 20),
  BARREL_LITRES("barrel-litres", "L", 200, 20, 1000),
  BARREL_WEIGHING("barrel-weighing-error", "%", 0.5, 0, 20),
  INJECTOR_RATIO("injector-ratio", "litres of feed from one of stock", 80, 10, 500),
  INJECTOR_STROKE("injector-stroke", "L of water", 0.45, 0.05, 5),
  INJECTOR_WEAR("injector-wear", "% a day", 0.03, 0, 5),
  INJECTOR_WANDER("injector-wander", "%", 0.8, 0, 10),
  GROWING_ON("growing-on", "mS/cm at 25 °C", 1.50, 0.1, 5),
  HEAVY_FEEDERS("heavy-feeders", "mS/cm at 25 °C", 1.95, 0.1, 5),
  SEEDLINGS("seedlings", "mS/cm at 25 °C", 0.80, 0.1, 5),
  LINE_FLOW("line-flow", "L/min", 20, 2, 100),
  PROBE_NOISE("probe-noise", "%", 0.2, 0, 5),
  SOURCE_FOULING("source-fouling", "% a day", 0.02, 0, 5),
  TANK_FOULING("tank-fouling", "% a day", 0.38, 0, 5),
  LINE_FOULING("line-fouling", "% a day", 0.15, 0, 5),
  TANK_CELL_ERROR("tank-cell-error", "%", -2.1, -30, 30);

  private final String text;
  private final String unit;
  private final double initial;
  private final double min;
  private final double max;

  Parameter(String text, String unit, double initial, double min, double max) {
    this.text = text;
    this.unit = unit;
    this.initial = initial;
    this.min = min;
    this.max = max;
  }

  String text() {
    return text;
  }

  double initial() {
    return initial;
  }

  boolean accepts(double value) {
    return value >= min && value <= max;
  }

  /** For a message: {@code 0.02 to 3 mS/cm at 25 °C}. */
  String range() {
    return String.format(Locale.ROOT, "%s to %s %s", min, max, unit);
  }

  static Optional<Parameter> named(String text) {
    return Arrays.stream(values()).filter(p -> p.text.equals(text)).findFirst();
  }

  static String names() {
    return Arrays.stream(values()).map(Parameter::text).collect(Collectors.joining(", "));
  }
}
