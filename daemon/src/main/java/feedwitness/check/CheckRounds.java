package feedwitness.check;

import java.util.ArrayList;
import java.util.List;

/** The order of a check and what its rounds have found; facts go in, new or out of the records. */
final class CheckRounds {
  private final int standards;
  private final List<StandardMeasured> measured = new ArrayList<>();

  private Instrument instrument;
  private Round round = Round.AS_FOUND;
  private Verdict verdict = Verdict.CANT_TELL;
  private boolean cleaned;
  private boolean adjusted;

  CheckRounds(Instrument instrument, int standards) {
    this.instrument = instrument;
    this.standards = standards;
  }

  Instrument instrument() {
    return instrument;
  }

  Round round() {
    return round;
  }

  /** Of the last round that was whole. */
  Verdict verdict() {
    return verdict;
  }

  boolean adjusted() {
    return adjusted;
  }

  List<StandardMeasured> measured() {
    return List.copyOf(measured);
  }

  List<StandardResult> of(Round wanted) {
    return measured.stream()
        .filter(one -> one.round() == wanted)
        .map(StandardMeasured::result)
        .toList();
  }

  /** Index of the standard whose turn it is. */
  int next() {
    return of(round).size();
  }

  boolean whole() {
    return next() >= standards;
  }

  void accept(CheckEvidence record) {
    if (record instanceof StandardMeasured one && one.round() == round && !whole()) {
      measured.add(one);
      if (whole()) {
        verdict = Verdict.together(of(round).stream().map(StandardResult::verdict).toList());
      }
    } else if (record instanceof ProbeCleaned) {
      cleaned = true;
      begin(Round.AFTER_CLEANING);
    } else if (record instanceof CurveAdjusted one) {
      adjusted = true;
      instrument = instrument.with(one.after());
      begin(Round.AS_LEFT);
    }
  }

  private void begin(Round other) {
    round = other;
    // A second look of the same kind counts; the first one stays in the records.
    measured.removeIf(one -> one.round() == other);
  }

  /** What an adjustment would do, or why none is to be made. */
  AdjustmentSum.Outcome proposal() {
    if (!whole()) {
      return new AdjustmentSum.Refused("measure all standards of this round first");
    }
    if (verdict == Verdict.PASS) {
      return new AdjustmentSum.Refused(
          "it is within its tolerance; leave it as it is, each adjustment adds doubt");
    }
    if (!cleaned) {
      return new AdjustmentSum.Refused(
          "clean the probe and check again first: adjusted with dirt on it, it reads wrong once the dirt is gone");
    }
    return AdjustmentSum.of(instrument, of(round));
  }
}
