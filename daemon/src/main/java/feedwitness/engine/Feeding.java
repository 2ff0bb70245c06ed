package feedwitness.engine;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.Band;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.PointLimits;
import feedwitness.site.Site;
import feedwitness.site.Strength;
import feedwitness.site.StrengthOf;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What runs where, as people said, and the limits that follow from it. What was said counts until
 * something else is said, or until a plain-water day begins or ends. Not for several threads.
 */
final class Feeding {
  /** Plain water may differ so far from the source, mS/cm: rests of feed in pipes. */
  static final double PLAIN_TOLERANCE = 0.15;

  /** A line needs so long until what was turned on reaches the probe. */
  static final Duration SETTLING = Duration.ofMinutes(5);

  private final Map<PointName, Running> said = new LinkedHashMap<>();
  private final Map<String, Strength> learned = new LinkedHashMap<>();

  void say(PointName point, Running running) {
    said.put(point, running);
  }

  void learn(Strength strength) {
    learned.put(strength.name(), strength);
  }

  boolean knows(String strength) {
    return learned.containsKey(strength);
  }

  /** Configured and learned strengths of a point; a configured name hides a learned one. */
  List<Strength> strengths(Site site, PointName point) {
    Map<String, Strength> all = new LinkedHashMap<>(learned);
    site.strengths().forEach(strength -> all.put(strength.name(), strength));
    return new ArrayList<>(all.values().stream().filter(s -> s.isFedAt(point)).toList());
  }

  /** What runs at a point at a time. */
  Running at(MeasuringPoint point, ZoneId zone, Stamp now) {
    Running last = said.getOrDefault(point.name(), Running.UNSAID);
    boolean scheduled = !point.limits().plainWaterDays().isEmpty() && now.dated();
    if (!scheduled) {
      return last;
    }
    LocalDate today = now.wall().atZone(zone).toLocalDate();
    boolean plainToday = plain(point, today.getDayOfWeek());
    Optional<LocalDate> saidOn =
        last.since().filter(Stamp::dated).map(at -> at.wall().atZone(zone).toLocalDate());
    if (saidOn.isPresent() && !changed(point, saidOn.get(), today)) {
      return last;
    }
    return plainToday
        ? new Running(Running.What.PLAIN_WATER, "", "", Optional.empty())
        : Running.UNSAID;
  }

  /** Whether a plain-water day began or ended since. */
  private static boolean changed(MeasuringPoint point, LocalDate since, LocalDate today) {
    boolean then = plain(point, since.getDayOfWeek());
    for (LocalDate day = since; day.isBefore(today); day = day.plusDays(1)) {
      if (plain(point, day.plusDays(1).getDayOfWeek()) != then) {
        return true;
      }
      if (day.isAfter(since.plusDays(DayOfWeek.values().length))) {
        return false;
      }
    }
    return false;
  }

  private static boolean plain(MeasuringPoint point, DayOfWeek day) {
    return point.limits().plainWaterDays().contains(day);
  }

  /** Whether what was said last has not reached the probe yet. */
  boolean settling(PointName point, Stamp now) {
    Optional<Stamp> since = said.getOrDefault(point, Running.UNSAID).since();
    return since
        .filter(at -> at.boot() == now.boot())
        .filter(at -> now.monotonicNanos() - at.monotonicNanos() < SETTLING.toNanos())
        .isPresent();
  }

  /** The limits that hold at a point at a time. */
  BandNow band(Site site, MeasuringPoint point, Stamp now) {
    PointLimits own = point.limits();
    Optional<PointName> source = site.sourceOf(point);
    Running running = at(point, site.zone(), now);
    Optional<Strength> strength =
        strengths(site, point.name()).stream()
            .filter(each -> each.name().equals(running.strength()))
            .findFirst();
    return switch (running.what()) {
      case NOTHING ->
          new BandNow(
              Band.NONE, own.of(), source, own.temperature(), Optional.of("nothing runs here"), "");
      case PLAIN_WATER ->
          new BandNow(
              source.isPresent()
                  ? new Band(Double.NaN, PLAIN_TOLERANCE, PLAIN_TOLERANCE / 3)
                  : Band.NONE,
              StrengthOf.ADDED,
              source,
              own.temperature(),
              Optional.empty(),
              "plain water");
      case STRENGTH ->
          strength
              .map(
                  s ->
                      new BandNow(
                          s.band(), s.of(), source, own.temperature(), Optional.empty(), s.title()))
              .orElseGet(() -> configured(own, source));
      case UNSAID -> configured(own, source);
    };
  }

  private static BandNow configured(PointLimits own, Optional<PointName> source) {
    return new BandNow(
        own.conductivity(),
        own.of(),
        source,
        own.temperature(),
        Optional.empty(),
        own.conductivity().isEmpty() ? "" : "configured");
  }
}
