package feedwitness.check;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether readings in a standard have come to rest: over the last minute (at least ten readings, at
 * most five minutes) a straight line is laid through them. At rest means that even the steepest
 * line the scatter allows (95 %) would move less across the window than the instrument resolves,
 * and that the scatter is no more than an instrument of its kind has. Noisy readings need a longer
 * window.
 *
 * @param resolution smallest step of the instrument, mS/cm, > 0
 * @param repeatabilityPercent half-width within which repeated readings lie, % of reading, > 0
 * @param readings in order of time, only as many as may still be needed
 */
record Settling(double resolution, double repeatabilityPercent, List<Reading> readings) {
  static final int LEAST_READINGS = 10;
  private static final double LEAST_SECONDS = 60;
  private static final double MOST_SECONDS = 300;
  private static final int MOST_READINGS = 1200;
  private static final double MOST_KELVIN = 0.5;

  /** One reading; seconds of any origin, mS/cm, °C (NaN if none). */
  record Reading(double seconds, double milliSiemensPerCm, double celsius) {}

  Settling {
    readings = List.copyOf(readings);
  }

  static Settling begin(double resolution, double repeatabilityPercent) {
    return new Settling(resolution, repeatabilityPercent, List.of());
  }

  Settling with(Reading reading) {
    List<Reading> kept = new ArrayList<>(readings);
    kept.add(reading);
    int start = 0;
    while (kept.size() - start > LEAST_READINGS
        && (kept.size() - start > MOST_READINGS
            || reading.seconds() - kept.get(start).seconds() > MOST_SECONDS)) {
      start++;
    }
    return new Settling(resolution, repeatabilityPercent, kept.subList(start, kept.size()));
  }

  /** How it stands. The shortest window that is at rest counts. */
  State state() {
    int shortest = shortestStart();
    if (shortest < 0) {
      return new Waiting(readings.size(), LEAST_READINGS);
    }
    State first = judge(readings.subList(shortest, readings.size()));
    // A longer window only helps where noise, not movement, is in the way: try ever older starts.
    int step = Math.max(1, shortest / 8);
    for (int start = shortest - step; !(first instanceof Settled) && start >= 0; start -= step) {
      if (judge(readings.subList(start, readings.size())) instanceof Settled settled) {
        return settled;
      }
    }
    return first;
  }

  private int shortestStart() {
    if (readings.isEmpty()) {
      return -1;
    }
    double last = readings.get(readings.size() - 1).seconds();
    for (int i = readings.size() - LEAST_READINGS; i >= 0; i--) {
      if (last - readings.get(i).seconds() >= LEAST_SECONDS) {
        return i;
      }
    }
    return -1;
  }

  private State judge(List<Reading> window) {
    Line line = Line.through(window);
    double span = window.get(window.size() - 1).seconds() - window.get(0).seconds();
    double moved = line.slope() * span;
    double doubt = StudentT.quantile95(window.size() - 2) * line.slopeStandardError() * span;
    double size = Math.abs(line.mean());
    double allowed = Math.max(1.5 * resolution, repeatabilityPercent / 200 * size);
    double scatterAllowed = Math.max(resolution, repeatabilityPercent / 100 * size);
    double celsiusMoved = celsiusMoved(window, span);
    if (line.residual() > scatterAllowed) {
      return new Unsteady(line.residual(), scatterAllowed);
    }
    if (Math.abs(moved) + doubt > allowed || Math.abs(celsiusMoved) > MOST_KELVIN) {
      return new Moving(line.slope() * 60, celsiusMoved / span * 60);
    }
    return new Settled(
        line.mean(), meanCelsius(window), line.residual(), moved, window.size(), span);
  }

  /** Of those readings that have one, if most have. */
  private static double meanCelsius(List<Reading> window) {
    List<Reading> warm = withCelsius(window);
    return 2 * warm.size() < window.size()
        ? Double.NaN
        : warm.stream().mapToDouble(Reading::celsius).average().orElse(Double.NaN);
  }

  private static List<Reading> withCelsius(List<Reading> window) {
    return window.stream().filter(reading -> !Double.isNaN(reading.celsius())).toList();
  }

  /** K across the window; 0 where next to no temperature is sent. */
  private static double celsiusMoved(List<Reading> window, double span) {
    List<Reading> warm = withCelsius(window);
    if (warm.size() < LEAST_READINGS / 2) {
      return 0;
    }
    List<Reading> course =
        warm.stream().map(r -> new Reading(r.seconds(), r.celsius(), Double.NaN)).toList();
    return Line.through(course).slope() * span;
  }

  /** How readings in a standard stand. */
  sealed interface State {}

  /** Too few readings or too little time. */
  record Waiting(int readings, int needed) implements State {}

  /** Still on its way, mS/cm and K a minute. */
  record Moving(double milliSiemensPerCmPerMinute, double kelvinPerMinute) implements State {}

  /** It jumps about, mS/cm. */
  record Unsteady(double scatter, double allowed) implements State {}

  /**
   * At rest.
   *
   * @param mean mS/cm
   * @param celsius mean; NaN if none
   * @param scatter standard deviation about the line, mS/cm
   * @param moved along the line across the window, mS/cm, signed
   * @param seconds length of the window
   */
  record Settled(
      double mean, double celsius, double scatter, double moved, int readings, double seconds)
      implements State {}
}
