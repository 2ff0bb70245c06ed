package feedwitness.simulate;

import java.time.Instant;
import java.util.List;

/**
 * What is really so in the nursery at an instant, for holding the service's answers against. Only
 * tests and the demo may see it.
 *
 * @param faults what lasts at the moment, for example {@code line in-air}
 */
public record Truth(
    Instant time,
    Point source,
    Point tank,
    Point line,
    Drain drain,
    Feed feed,
    List<String> faults) {
  public Truth {
    faults = List.copyOf(faults);
  }

  /**
   * At a probe.
   *
   * @param at25 of the liquid where the probe is mounted, mS/cm at 25 °C
   * @param raw the same at its temperature, mS/cm
   * @param celsius temperature of the liquid, °C
   * @param indicated what the probe shows, mS/cm, not compensated
   * @param indicatedCelsius what the probe shows, °C
   * @param sensitivity what it shows over what it should; 1 is right
   * @param inAir whether it hangs in air or bubbles
   */
  public record Point(
      double at25,
      double raw,
      double celsius,
      double indicated,
      double indicatedCelsius,
      double sensitivity,
      boolean inAir) {}

  /**
   * Run-off of the reference bench since midnight; what a hand reading should find.
   *
   * @param at25 mS/cm at 25 °C; while there is none, of the last there was
   * @param celsius °C
   * @param litres volume
   */
  public record Drain(double at25, double celsius, double litres) {}

  /**
   * How feed is made.
   *
   * @param flow in the line, L/min; 0 between irrigation events
   * @param target what the line should carry, mS/cm at 25 °C
   * @param ratio litres of feed from one of stock, as set; infinite for plain water
   * @param injectedShare stock injected over what is set, when water flowed last; 1 is right, 0
   *     with the bypass open, an empty barrel or plain water
   * @param strokes of the injector since the start
   * @param stockGramsPerLitre feed in the barrel, g/L
   * @param barrelLitres left in the barrel
   * @param tankLitres in the tank
   * @param tankMixedAt25 what the tank would show mixed through, mS/cm at 25 °C
   */
  public record Feed(
      double flow,
      double target,
      double ratio,
      double injectedShare,
      long strokes,
      double stockGramsPerLitre,
      double barrelLitres,
      double tankLitres,
      double tankMixedAt25) {}
}
