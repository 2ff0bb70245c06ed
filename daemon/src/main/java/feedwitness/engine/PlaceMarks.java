package feedwitness.engine;

import feedwitness.check.CheckDesk;
import feedwitness.check.CheckSubject;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.PointName;
import feedwitness.sample.Indication;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which probes hang in a beaker or elsewhere now. Asked for every reading: waits for nobody. */
final class PlaceMarks {
  static final String CHECKED = "it is being checked";

  private volatile Map<PointName, Flags> marks = Map.of();

  /** Takes over what the desk knows; whether anything is different. */
  boolean look(CheckDesk desk, List<CheckSubject> probes) {
    Map<PointName, Flags> fresh = new HashMap<>();
    for (CheckSubject subject : probes) {
      if (desk.suppressed(subject)) {
        fresh.put(subject.name(), Flags.of(QualityFlag.IN_BEAKER));
      } else if (desk.outOfPlace(subject).isPresent()) {
        fresh.put(subject.name(), Flags.of(QualityFlag.OUT_OF_PLACE));
      }
    }
    if (fresh.equals(marks)) {
      return false;
    }
    marks = Map.copyOf(fresh);
    return true;
  }

  /** Adds to what a probe says that it hangs in a beaker or elsewhere. */
  Measurement marked(Measurement measurement) {
    Flags added = marks.get(measurement.point());
    return added == null
            || !(measurement.sample() instanceof Indication said)
            || said.origin() != Indication.Origin.PROBE
        ? measurement
        : measurement.with(measurement.flags().with(added));
  }

  boolean isInItsPlace(PointName point) {
    return !marks.containsKey(point);
  }

  /** Why alarms about a subject do not count now. */
  Optional<String> aside(String subject) {
    return PointName.isValid(subject)
            && marks.getOrDefault(new PointName(subject), Flags.NONE).has(QualityFlag.IN_BEAKER)
        ? Optional.of(CHECKED)
        : Optional.empty();
  }
}
