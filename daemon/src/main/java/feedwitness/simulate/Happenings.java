package feedwitness.simulate;

import feedwitness.simulate.Deed.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What lasts at the moment. Of one kind and target only the latest counts. */
final class Happenings {
  /** A deed from its first second to before its last. */
  private record Lasting(Deed deed, long from, long until) {}

  private final List<Lasting> lasting = new ArrayList<>();

  void begin(Deed deed, long second) {
    lasting.removeIf(
        old -> old.deed().kind() == deed.kind() && old.deed().target() == deed.target());
    lasting.add(new Lasting(deed, second, second + deed.duration().toSeconds()));
  }

  /** Forgets what is over, and tells it. */
  List<Deed> over(long second) {
    if (lasting.isEmpty()) {
      return List.of();
    }
    List<Deed> over = lasting.stream().filter(l -> l.until() <= second).map(Lasting::deed).toList();
    lasting.removeIf(l -> l.until() <= second);
    return over;
  }

  /** The deed of this kind that lasts now, if any. */
  Optional<Deed> now(DeedKind kind, Target target) {
    return find(kind, target).map(Lasting::deed);
  }

  boolean is(DeedKind kind, Target target) {
    return !lasting.isEmpty() && find(kind, target).isPresent();
  }

  /** How far it has come by the end of this second, 0 to 1; 0 if it does not last. */
  double progress(DeedKind kind, Target target, long second) {
    return find(kind, target)
        .map(l -> (second + 1 - l.from()) / (double) (l.until() - l.from()))
        .orElse(0.0);
  }

  /** For people, for example {@code line in-air}. */
  List<String> texts() {
    return lasting.stream().map(l -> l.deed().text()).toList();
  }

  private Optional<Lasting> find(DeedKind kind, Target target) {
    for (Lasting one : lasting) {
      if (one.deed().kind() == kind && one.deed().target() == target) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  /** What is wrong with a probe this second. */
  ProbeFault faultOf(Target probe) {
    if (lasting.isEmpty()) {
      return ProbeFault.NONE;
    }
    double fouling =
        now(DeedKind.FOULING, probe)
            .map(d -> d.amount() / 100 / d.duration().toSeconds())
            .orElse(0.0);
    return new ProbeFault(
        is(DeedKind.IN_AIR, probe),
        is(DeedKind.STUCK, probe),
        now(DeedKind.TEMPERATURE_FAILURE, probe).map(Deed::amount).orElse(Double.NaN),
        now(DeedKind.IN_STANDARD, probe).map(Deed::amount).orElse(0.0),
        fouling);
  }
}
