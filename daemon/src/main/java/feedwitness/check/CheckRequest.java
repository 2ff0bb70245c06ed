package feedwitness.check;

import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import feedwitness.measurement.InstrumentLimits;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Somebody wants to check a probe or meter.
 *
 * @param id names the check, unique, without blanks
 * @param author who does it, 1 to 80 characters
 * @param standards names on the shelf, one or two
 * @param tolerancePercent half-width, %, 0.1 to 20
 * @param feedLow weakest strength fed there, mS/cm at 25 °C; NaN if unknown
 * @param feedHigh strongest
 * @param before how the point reads now, mS/cm at 25 °C; NaN if unknown
 * @param mark last measurement, if there is one
 * @param today for the dates on the bottles
 * @param confirmed whether objections have been read and accepted
 */
public record CheckRequest(
    String id,
    CheckSubject subject,
    String author,
    StandardShelf shelf,
    List<String> standards,
    double tolerancePercent,
    Instrument instrument,
    double feedLow,
    double feedHigh,
    double before,
    Optional<Mark> mark,
    LocalDate today,
    boolean confirmed) {
  private static final double LEAST_TOLERANCE = 0.1;
  private static final double MOST_TOLERANCE = 20;

  public CheckRequest {
    standards = List.copyOf(standards);
  }

  /** Begins the check, or says why not. */
  Answer begin(When now, CheckLimits limits) {
    return begin(now, limits, List.of());
  }

  /** The same; {@code remarks} are objections that come from what is on record. */
  Answer begin(When now, CheckLimits limits, List<String> remarks) {
    Optional<String> refusal = refusal();
    if (refusal.isPresent()) {
      return new Refused(refusal.get());
    }
    List<StandardSolution> chosen = chosen();
    List<String> objections = new ArrayList<>(remarks);
    objections.addAll(objections(chosen));
    if (!objections.isEmpty() && !confirmed) {
      return new Confirm(objections);
    }
    CheckStarted started =
        new CheckStarted(
            new Entry(id, subject, now.wall(), author),
            chosen.stream().map(StandardSolution::name).toList(),
            chosen.stream().map(StandardSolution::title).toList(),
            tolerancePercent,
            instrument.percentPerKelvin(),
            instrument.basis(),
            before,
            mark,
            objections);
    return new Begun(new CheckSession(started, chosen, shelf, limits, now), started, objections);
  }

  private List<StandardSolution> chosen() {
    return standards.stream()
        .flatMap(name -> shelf.find(name).stream())
        .sorted(Comparator.comparingDouble(StandardSolution::nominal))
        .toList();
  }

  private Optional<String> refusal() {
    Optional<String> person = Persons.problem(author, "");
    if (person.isPresent()) {
      return person;
    }
    if (!(tolerancePercent >= LEAST_TOLERANCE && tolerancePercent <= MOST_TOLERANCE)) {
      return Optional.of(
          "tolerance %s is outside 0.1 to 20 %%; choose one in that range"
              .formatted(Say.percent(tolerancePercent)));
    }
    if (standards.isEmpty() || standards.size() > 2) {
      return Optional.of(
          "%d standards are named; name two, or one if there is only one"
              .formatted(standards.size()));
    }
    for (String name : standards) {
      if (shelf.find(name).isEmpty()) {
        return Optional.of(
            "there is no standard '%s' on the shelf; there are: %s"
                .formatted(
                    name,
                    String.join(
                        ", ", shelf.standards().stream().map(StandardSolution::name).toList())));
      }
    }
    if (standards.size() == 2 && standards.get(0).equals(standards.get(1))) {
      return Optional.of(
          "both standards are '%s'; take a weaker and a stronger one".formatted(standards.get(0)));
    }
    return chosen().stream().flatMap(standard -> outsideRange(standard).stream()).findFirst();
  }

  private Optional<String> outsideRange(StandardSolution standard) {
    InstrumentLimits rated = instrument.limits();
    boolean below = standard.nominal() < rated.minMilliSiemensPerCm();
    boolean above = standard.nominal() > rated.maxMilliSiemensPerCm();
    return below || above
        ? Optional.of(
            "%s is outside what %s can read, %s to %s mS/cm; take a %s standard"
                .formatted(
                    standard.title(),
                    subject,
                    Say.number(rated.minMilliSiemensPerCm(), 4),
                    Say.number(rated.maxMilliSiemensPerCm(), 4),
                    below ? "stronger" : "weaker"))
        : Optional.empty();
  }

  private List<String> objections(List<StandardSolution> chosen) {
    List<String> objections = new ArrayList<>();
    chosen.forEach(standard -> objections.addAll(standard.warnings(today)));
    if (chosen.size() == 1) {
      objections.add(
          "one standard cannot tell a wrong cell constant from an offset; take two if there are two");
    }
    double weakest = chosen.get(0).nominal();
    double strongest = chosen.get(chosen.size() - 1).nominal();
    if (chosen.size() == 2 && (feedLow < weakest || feedHigh > strongest)) {
      objections.add(
          "%s to %s mS/cm is fed there, but the standards are %s and %s mS/cm; %s"
              .formatted(
                  Say.number(feedLow, 3),
                  Say.number(feedHigh, 3),
                  Say.number(weakest, 4),
                  Say.number(strongest, 4),
                  shelf
                      .around(feedLow, feedHigh)
                      .map(
                          pair ->
                              "take '%s' and '%s', which lie around it"
                                  .formatted(pair.low().name(), pair.high().name()))
                      .orElse(
                          "the shelf has none around it, so the verdict holds near them only")));
    }
    return objections;
  }

  /** How a request is answered. */
  public sealed interface Answer {}

  /**
   * It begins.
   *
   * @param evidence to be kept
   * @param notes objections that were accepted
   */
  public record Begun(CheckSession session, CheckStarted evidence, List<String> notes)
      implements Answer {
    public Begun {
      notes = List.copyOf(notes);
    }
  }

  /** It may begin if these are accepted: ask, then request it again as confirmed. */
  public record Confirm(List<String> objections) implements Answer {
    public Confirm {
      objections = List.copyOf(objections);
    }
  }

  /** It may not, and why. */
  public record Refused(String words) implements Answer {}
}
