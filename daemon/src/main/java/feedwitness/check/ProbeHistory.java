package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All that is on record of one probe or meter, put in order.
 *
 * @param records all of them, in the order in which they were kept: a clock that was set back must
 *     not reorder them
 * @param checks oldest first, open ones too
 * @param cleanings outside checks as well
 * @param adjustments all of them, undone ones too
 * @param replacements by another probe or cell
 */
public record ProbeHistory(
    List<CheckEvidence> records,
    List<Check> checks,
    List<ProbeCleaned> cleanings,
    List<CurveAdjusted> adjustments,
    List<ProbeReplaced> replacements,
    List<ComparisonMade> comparisons,
    List<RangeQualified> qualifications) {
  public ProbeHistory {
    records = List.copyOf(records);
    checks = List.copyOf(checks);
    cleanings = List.copyOf(cleanings);
    adjustments = List.copyOf(adjustments);
    replacements = List.copyOf(replacements);
    comparisons = List.copyOf(comparisons);
    qualifications = List.copyOf(qualifications);
  }

  /**
   * Sorts the records of one probe.
   *
   * @param evidence in the order in which it was kept; of others it is left out
   */
  public static ProbeHistory of(CheckSubject subject, List<CheckEvidence> evidence) {
    Map<String, List<CheckEvidence>> byCheck = new LinkedHashMap<>();
    Map<String, CheckStarted> started = new LinkedHashMap<>();
    List<CheckEvidence> own =
        evidence.stream().filter(record -> record.subject().equals(subject)).toList();
    for (CheckEvidence record : own) {
      if (record instanceof CheckStarted start) {
        started.put(start.entry().check(), start);
      }
      byCheck.computeIfAbsent(record.entry().check(), id -> new ArrayList<>()).add(record);
    }
    List<Check> checks = new ArrayList<>();
    started.forEach(
        (id, start) -> checks.add(Check.of(start, byCheck.getOrDefault(id, List.of()))));
    return new ProbeHistory(
        own,
        checks,
        all(own, ProbeCleaned.class),
        all(own, CurveAdjusted.class),
        all(own, ProbeReplaced.class),
        all(own, ComparisonMade.class),
        all(own, RangeQualified.class));
  }

  private static <T> List<T> all(List<CheckEvidence> evidence, Class<T> type) {
    return evidence.stream().filter(type::isInstance).map(type::cast).toList();
  }

  /** Where nothing may be interpolated across. */
  public List<Mark> breaks() {
    List<Mark> marks = new ArrayList<>();
    cleanings.forEach(one -> one.mark().ifPresent(marks::add));
    adjustments.forEach(one -> one.mark().ifPresent(marks::add));
    replacements.forEach(one -> one.mark().ifPresent(marks::add));
    return marks;
  }

  /** When another probe or cell was put there, the last time. */
  public Optional<ProbeReplaced> replaced() {
    return replacements.isEmpty()
        ? Optional.empty()
        : Optional.of(replacements.get(replacements.size() - 1));
  }

  /** The same of the probe or cell that hangs there now alone. */
  public ProbeHistory ofPresentProbe() {
    return replaced()
        .map(last -> of(last.subject(), records.subList(records.indexOf(last) + 1, records.size())))
        .orElse(this);
  }

  private Optional<CurveAdjusted> lastAdjustment() {
    List<CurveAdjusted> own = ofPresentProbe().adjustments();
    return own.isEmpty() ? Optional.empty() : Optional.of(own.get(own.size() - 1));
  }

  /** Calibration that the records leave in use. */
  public CalibrationCurve curve() {
    return lastAdjustment()
        .map(CurveAdjusted::after)
        .orElseGet(() -> new CalibrationCurve.Identity());
  }

  /** The last adjustment of ours that can be taken back. */
  public Optional<CurveAdjusted> undoable() {
    return lastAdjustment()
        .filter(
            last ->
                last.method() == CurveAdjusted.Method.ONE_POINT
                    || last.method() == CurveAdjusted.Method.TWO_POINT);
  }

  /** The check that has no end yet. */
  public Optional<Check> open() {
    return checks.stream().filter(check -> check.closed().isEmpty()).reduce((a, b) -> b);
  }

  /** Likely errors of a measurement, of all records that cover it, newest last. */
  public List<RangeQualified> covering(Mark mark) {
    return qualifications.stream().filter(range -> range.covers(mark)).toList();
  }

  /** One check with all its records. */
  public record Check(
      CheckStarted started,
      List<CheckEvidence> since,
      Optional<CheckClosed> closed,
      Optional<ProbeReturned> returned) {
    public Check {
      since = List.copyOf(since);
    }

    private static Check of(CheckStarted started, List<CheckEvidence> records) {
      return new Check(
          started,
          records.stream().filter(one -> one != started).toList(),
          all(records, CheckClosed.class).stream().findFirst(),
          all(records, ProbeReturned.class).stream().findFirst());
    }

    /** Results of a round, the last look of its kind; empty if it is not whole. */
    public List<StandardMeasured> round(Round round) {
      List<StandardMeasured> found =
          all(since, StandardMeasured.class).stream().filter(m -> m.round() == round).toList();
      int whole = started.standards().size();
      int surplus = found.size() % whole;
      List<StandardMeasured> complete = found.subList(0, found.size() - surplus);
      return complete.isEmpty()
          ? List.of()
          : complete.subList(complete.size() - whole, complete.size());
    }

    List<StandardResult> results(Round round) {
      return round(round).stream().map(StandardMeasured::result).toList();
    }

    /** Errors a whole round found. */
    public Optional<Errors> errors(Round round) {
      List<StandardResult> results = results(round);
      return results.isEmpty() ? Optional.empty() : Optional.of(Errors.of(results));
    }

    /** The last whole round. */
    public Optional<Round> lastRound() {
      return Stream.of(Round.values()).filter(one -> !round(one).isEmpty()).reduce((a, b) -> b);
    }

    /** Errors it left behind. */
    public Optional<Errors> errors() {
      return lastRound().flatMap(this::errors);
    }

    /** Of a round; can't tell if it is not whole. */
    public Verdict verdict(Round round) {
      return Verdict.together(results(round).stream().map(StandardResult::verdict).toList());
    }

    /** Of the last whole round. */
    public Verdict verdict() {
      return lastRound().map(this::verdict).orElse(Verdict.CANT_TELL);
    }

    /** First measurement in its place again; the last before the check if that is not known. */
    public Optional<Mark> back() {
      return returned.flatMap(ProbeReturned::to).or(started::mark);
    }

    /** Names it as the cause of what follows from it. */
    Entry cause() {
      CheckEvidence last = since.isEmpty() ? started : since.get(since.size() - 1);
      return new Entry(
          started.entry().check(), started.subject(), last.at(), CheckEvidence.BY_ITSELF);
    }

    boolean cleaned() {
      return !all(since, ProbeCleaned.class).isEmpty();
    }

    boolean adjusted() {
      return !all(since, CurveAdjusted.class).isEmpty();
    }
  }
}
