package feedwitness.settings;

import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import feedwitness.quantity.PointName;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads {@code [check]}, and what points say of their checks. */
final class CheckReader {
  private static final String TOLERANCE = "tolerance-percent";
  private static final String INTERVAL = "interval";
  private static final String LONGEST = "longest-interval";
  static final Set<String> KEYS = Set.of(TOLERANCE, INTERVAL, LONGEST);

  /** Keys of a point, in the order of those above. */
  private static final String POINT_TOLERANCE = "check-tolerance-percent";

  private static final String POINT_INTERVAL = "check-interval";
  static final Set<String> POINT_KEYS = Set.of(POINT_TOLERANCE, POINT_INTERVAL);

  private static final double LEAST_TOLERANCE = 0.1;
  private static final double MOST_TOLERANCE = 20;
  private static final Duration SHORTEST = Duration.ofDays(1);
  private static final Duration MOST = Duration.ofDays(366);

  private CheckReader() {}

  /** Faults are noted; what is faulty stays at its default. */
  static CheckRules read(Optional<Section> own, List<PlacedPoint> points) {
    CheckRule usual =
        own.flatMap(root -> root.table("check", KEYS))
            .map(section -> rule(section, TOLERANCE, INTERVAL, LONGEST, CheckRule.USUAL))
            .orElse(CheckRule.USUAL);
    Map<PointName, CheckRule> rules = new HashMap<>();
    for (PlacedPoint placed : points) {
      Section section = placed.section();
      if (POINT_KEYS.stream().anyMatch(section::has)) {
        rules.put(placed.point().name(), rule(section, POINT_TOLERANCE, POINT_INTERVAL, "", usual));
      }
    }
    List<StandardSolution> standards = own.map(StandardReader::read).orElse(List.of());
    return new CheckRules(new StandardShelf(standards), usual, rules);
  }

  private static CheckRule rule(
      Section section, String tolerance, String interval, String longest, CheckRule usual) {
    double percent =
        section
            .number(tolerance, LEAST_TOLERANCE, MOST_TOLERANCE, "%")
            .orElse(usual.tolerancePercent());
    Duration first = section.duration(interval, SHORTEST, MOST).orElse(usual.interval());
    Duration most =
        longest.isEmpty()
            ? longer(first, usual.longestInterval())
            : section
                .duration(longest, SHORTEST, MOST)
                .orElse(longer(first, usual.longestInterval()));
    return section
        .made(longest.isEmpty() ? interval : longest, () -> new CheckRule(percent, first, most))
        .orElse(usual);
  }

  private static Duration longer(Duration a, Duration b) {
    return a.compareTo(b) > 0 ? a : b;
  }
}
