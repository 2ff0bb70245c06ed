package feedwitness.engine;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.MeasuringPoint.Place;
import feedwitness.site.Site;
import feedwitness.site.Strength;
import feedwitness.site.StrengthOf;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.tinylog.Logger;

/** What runs where with its records, and the levels that come back. Not for several threads. */
final class FeedingBook {
  /** Kind of the records of what runs. */
  static final String KIND = "feeding";

  /** Kind of the records of levels that were named. */
  static final String STRENGTH_KIND = "strength";

  static final String STATE = "levels";

  private static final Set<Place> FED = Set.of(Place.LINE, Place.TANK, Place.OTHER);
  private static final int MOST_RECORDS = 200;

  private final Feeding feeding = new Feeding();
  private final Map<PointName, UsualLevels> levels = new HashMap<>();

  /** As the records say. */
  FeedingBook(EvidenceHistory history) {
    List<Evidence> newest =
        history.evidence(EvidenceQuery.newest(MOST_RECORDS, KIND, STRENGTH_KIND));
    for (int i = newest.size() - 1; i >= 0; i--) {
      try {
        restore(newest.get(i));
      } catch (IllegalArgumentException e) {
        Logger.warn("record {} is of another program: {}", newest.get(i).key(), e.getMessage());
      }
    }
    history.state(STATE).ifPresent(this::restoreLevels);
  }

  private void restore(Evidence record) {
    PointName point = new PointName(record.subject());
    if (record.kind().equals(KIND)) {
      feeding.say(
          point,
          new Running(
              Running.What.valueOf(record.field("what")),
              record.field("strength"),
              record.author(),
              Optional.of(record.at())));
    } else {
      feeding.learn(
          new Strength(
              record.field("name"),
              record.field("title"),
              Optional.of(point),
              Double.parseDouble(record.field("conductivity")),
              StrengthOf.TOTAL,
              Double.parseDouble(record.field("tolerance"))));
    }
  }

  private void restoreLevels(String text) {
    try {
      for (String line : text.lines().toList()) {
        int space = line.indexOf(' ');
        levels.put(
            new PointName(line.substring(0, Math.max(0, space))),
            UsualLevels.parse(line.substring(space + 1)));
      }
    } catch (IllegalArgumentException e) {
      Logger.warn("the usual levels kept cannot be read and are learnt anew: {}", e.getMessage());
    }
  }

  /** What is kept of the levels. */
  String levelsText() {
    StringBuilder text = new StringBuilder();
    levels.forEach((point, known) -> text.append(point + " " + known.toText() + "\n"));
    return text.toString();
  }

  Feeding feeding() {
    return feeding;
  }

  /** Whether what runs there can be said. */
  static boolean isFed(MeasuringPoint point) {
    return FED.contains(point.place());
  }

  /** A usable reading of a line; whether a visit to a level was counted. */
  boolean learn(MeasuringPoint point, double milliSiemensPerCm, Stamp at) {
    return point.place() == Place.LINE
        && levels
            .computeIfAbsent(point.name(), name -> new UsualLevels())
            .add(milliSiemensPerCm, at.monotonicNanos());
  }

  void follow(Site site) {
    levels.keySet().removeIf(name -> site.point(name).isEmpty());
  }

  FeedingStatus status(Site site, MeasuringPoint point, double source, Stamp now) {
    Running running = feeding.at(point, site.zone(), now);
    BandNow band = feeding.band(site, point, now);
    String why =
        running.who().isEmpty()
            ? running.what() == Running.What.PLAIN_WATER ? "plain-water day" : ""
            : running.who() + " said so";
    return new FeedingStatus(
        point,
        running,
        why,
        feeding.strengths(site, point.name()),
        band,
        level(site, point, source).map(level -> question(point, level)));
  }

  private static FeedingStatus.Question question(MeasuringPoint point, UsualLevels.Level level) {
    return new FeedingStatus.Question(
        level.milliSiemensPerCm(),
        level.visits(),
        String.format(
            Locale.ROOT,
            "%s came to about %.2f mS/cm %d times. What is it?",
            point.title(),
            level.milliSiemensPerCm(),
            level.visits()));
  }

  private Optional<UsualLevels.Level> level(Site site, MeasuringPoint point, double source) {
    UsualLevels known = levels.get(point.name());
    return known == null
        ? Optional.empty()
        : known.question(level -> explained(site, point, source, level));
  }

  /** Whether a level is a strength that is fed there, or the source itself. */
  private boolean explained(Site site, MeasuringPoint point, double source, double level) {
    if (Math.abs(level - source) <= Feeding.PLAIN_TOLERANCE) {
      return true;
    }
    return feeding.strengths(site, point.name()).stream()
        .anyMatch(
            each -> {
              double total =
                  each.milliSiemensPerCm() + (each.of() == StrengthOf.ADDED ? source : 0);
              return Math.abs(level - total) <= each.tolerance();
            });
  }

  /** Takes what somebody said; the draft is to be put on record. */
  EvidenceDraft say(PointName point, Running running) {
    feeding.say(point, running);
    Map<String, String> fields = new TreeMap<>();
    fields.put("what", running.what().name());
    fields.put("strength", running.strength());
    return EvidenceDraft.of(KIND, point.text(), fields).by(running.who());
  }

  /** The open question of a point is answered; a draft to be put on record if a name was given. */
  Optional<EvidenceDraft> answer(
      Site site, MeasuringPoint point, double source, String title, String who) {
    UsualLevels.Level level = level(site, point, source).orElseThrow();
    Optional<EvidenceDraft> draft = Optional.empty();
    if (!title.isEmpty()) {
      Strength strength =
          new Strength(
              name(site, point.name(), level.milliSiemensPerCm()),
              title,
              Optional.of(point.name()),
              Math.round(level.milliSiemensPerCm() * 100) / 100.0,
              StrengthOf.TOTAL,
              Math.min(Strength.USUAL_TOLERANCE, level.milliSiemensPerCm() / 2));
      feeding.learn(strength);
      Map<String, String> fields = new TreeMap<>();
      fields.put("name", strength.name());
      fields.put("title", title);
      fields.put("conductivity", Double.toString(strength.milliSiemensPerCm()));
      fields.put("tolerance", Double.toString(strength.tolerance()));
      draft = Optional.of(EvidenceDraft.of(STRENGTH_KIND, point.name().text(), fields).by(who));
    }
    levels.getOrDefault(point.name(), new UsualLevels()).answered(level);
    return draft;
  }

  /** A name nothing else has: {@code line-195} for 1.95 mS/cm. */
  private String name(Site site, PointName point, double level) {
    String base = "%.24s-%d".formatted(point, Math.round(level * 100));
    String name = base;
    for (int i = 2; taken(site, name); i++) {
      name = base + "-" + i;
    }
    return name;
  }

  private boolean taken(Site site, String name) {
    return site.strengths().stream().anyMatch(s -> s.name().equals(name)) || feeding.knows(name);
  }
}
