package feedwitness.engine;

import feedwitness.check.CheckDesk;
import feedwitness.check.CheckRequest;
import feedwitness.check.CheckSubject;
import feedwitness.check.Instrument;
import feedwitness.check.Mark;
import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;

/** What is known here of a check that somebody wants to begin. Guarded by its owner. */
final class CheckRequests {
  private final LiveView view;
  private final Function<PointName, Optional<Basis>> bases;
  private final CheckPlan plan;
  private final CheckDesk desk;

  CheckRequests(
      LiveView view, Function<PointName, Optional<Basis>> bases, CheckPlan plan, CheckDesk desk) {
    this.view = view;
    this.bases = bases;
    this.plan = plan;
    this.desk = desk;
  }

  /** Empty if there is no such probe. */
  Optional<CheckRequest> of(CheckBench.Wish wish, Stamp now) {
    CheckSubject subject = wish.subject();
    Optional<Measurement> last = last(subject);
    Fed fed = Fed.at(view, subject, now);
    return instrument(wish)
        .map(
            known ->
                new CheckRequest(
                    fresh(subject, today(now)),
                    subject,
                    wish.who(),
                    plan.shelf(),
                    wish.standards(),
                    Double.isNaN(wish.tolerancePercent())
                        ? plan.tolerance(subject.name())
                        : wish.tolerancePercent(),
                    known,
                    fed.low(),
                    fed.high(),
                    last.map(Measurement::conductivity25MilliSiemensPerCm).orElse(Double.NaN),
                    last.map(Measurement::stamp).map(Mark::of),
                    today(now),
                    wish.confirmed()));
  }

  private Optional<Measurement> last(CheckSubject subject) {
    return subject.kind() == CheckSubject.Kind.PROBE
        ? view.point(subject.name()).flatMap(PointStatus::lastReading)
        : Optional.empty();
  }

  private Optional<Instrument> instrument(CheckBench.Wish wish) {
    CheckSubject subject = wish.subject();
    if (subject.kind() == CheckSubject.Kind.METER) {
      return Optional.of(wish.handheld());
    }
    return view.site()
        .point(subject.name())
        .filter(point -> point.probe().isPresent())
        .flatMap(point -> bases.apply(point.name()))
        .map(basis -> new Instrument(basis, Double.NaN));
  }

  private LocalDate today(Stamp now) {
    return now.wall().atZone(view.site().zone()).toLocalDate();
  }

  /** {@code tank-20260602-1}, for people who write it on a page. */
  private String fresh(CheckSubject subject, LocalDate today) {
    String day = today.toString().replace("-", "");
    String base =
        (subject.kind() == CheckSubject.Kind.METER ? "meter-" : "") + subject.name() + "-" + day;
    int number = 1;
    while (isTaken(base + "-" + number)) {
      number++;
    }
    return base + "-" + number;
  }

  private boolean isTaken(String id) {
    return desk.evidence().stream().anyMatch(record -> record.entry().check().equals(id));
  }
}
