package feedwitness.simulate;

import feedwitness.simulate.Deed.Target;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a schedule may make happen, to what, for how long and how much of it. */
enum DeedKind {
  UNPLUG("unplug", Where.LINK, Lasting.YES),
  SILENCE("silence", Where.ANY, Lasting.YES),
  GARBAGE("garbage", Where.LINK, Lasting.YES),
  IN_AIR("in-air", Where.PROBE, Lasting.YES),
  STUCK("stuck", Where.PROBE, Lasting.YES),
  TEMPERATURE_FAILURE("temperature-failure", Where.PROBE, Lasting.YES, "C", -127, -200, 200),
  IN_STANDARD("in-standard", Where.PROBE, Lasting.YES, "mS/cm", 1.413, 0.01, 20),
  FOULING("fouling", Where.PROBE, Lasting.YES, "%", 15, 0.1, 90),
  CLEAN("clean", Where.PROBE, Lasting.NO),
  ADJUST("adjust", Where.PROBE, Lasting.NO, "%", 0, -30, 30),
  INJECTOR_SAG("injector-sag", Where.NURSERY, Lasting.YES, "%", 12, 0.1, 100),
  INJECTOR_SERVICE("injector-service", Where.NURSERY, Lasting.NO),
  TOP_UP("top-up", Where.NURSERY, Lasting.NO, "L", 120, 1, 5000),
  BATCH("batch", Where.NURSERY, Lasting.NO, "mS/cm", 1.5, 0.1, 5),
  EMPTY_BARREL("empty-barrel", Where.NURSERY, Lasting.YES),
  REFILL_BARREL("refill-barrel", Where.NURSERY, Lasting.NO, "%", 100, 1, 300),
  BYPASS("bypass", Where.NURSERY, Lasting.YES);

  /** Whether a duration must be written. */
  enum Lasting {
    YES,
    NO
  }

  private enum Where {
    LINK,
    PROBE,
    ANY,
    NURSERY;

    Set<Target> targets() {
      return switch (this) {
        case LINK -> EnumSet.of(Target.SOURCE, Target.BUS);
        case PROBE -> EnumSet.of(Target.SOURCE, Target.TANK, Target.LINE);
        case ANY -> EnumSet.of(Target.SOURCE, Target.TANK, Target.LINE, Target.BUS);
        case NURSERY -> EnumSet.of(Target.NURSERY);
      };
    }
  }

  private final String text;
  private final Where where;
  private final Lasting lasting;
  private final String unit;
  private final double usual;
  private final double min;
  private final double max;

  DeedKind(String text, Where where, Lasting lasting) {
    this(text, where, lasting, "", 0, 0, 0);
  }

  DeedKind(
      String text,
      Where where,
      Lasting lasting,
      String unit,
      double usual,
      double min,
      double max) {
    this.text = text;
    this.where = where;
    this.lasting = lasting;
    this.unit = unit;
    this.usual = usual;
    this.min = min;
    this.max = max;
  }

  String text() {
    return text;
  }

  Lasting lasting() {
    return lasting;
  }

  /** As written behind the number; empty if the kind takes no amount. */
  String unit() {
    return unit;
  }

  /** Used when no amount is written. */
  double usual() {
    return usual;
  }

  boolean accepts(double amount) {
    return amount >= min && amount <= max;
  }

  /** For a message. */
  String range() {
    return min + " to " + max + " " + unit;
  }

  Set<Target> targets() {
    return where.targets();
  }

  boolean hitsTheNursery() {
    return where == Where.NURSERY;
  }

  static Optional<DeedKind> named(String text) {
    return Arrays.stream(values()).filter(k -> k.text.equals(text)).findFirst();
  }

  static String names() {
    return Arrays.stream(values()).map(DeedKind::text).collect(Collectors.joining(", "));
  }
}
