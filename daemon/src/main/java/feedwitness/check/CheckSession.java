package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import java.util.List;
import java.util.Optional;

/**
 * One check on its way, driven by what people do, by measurements and by time; the same inputs make
 * the same answers. Order: low standard before high; as found, then cleaned and measured again,
 * then adjusted if that is still needed, then as left. Belongs to one thread.
 */
public final class CheckSession {
  private final CheckStarted started;
  private final List<StandardSolution> standards;
  private final StandardShelf shelf;
  private final CheckLimits limits;
  private final CheckRounds rounds;

  private Phase phase = Phase.RINSE;
  private BeakerLook look;
  private Optional<StandardResult> asked = Optional.empty();
  private String question = "";

  /** Why readings at rest gave no result, until something is done about it. */
  private String obstacle = "";

  /** Why the last reading was left out. */
  private String leftOut = "";

  private When lastDeed;
  private When immersedAt;

  CheckSession(
      CheckStarted started,
      List<StandardSolution> standards,
      StandardShelf shelf,
      CheckLimits limits,
      When now) {
    this.started = started;
    this.standards = List.copyOf(standards);
    this.shelf = shelf;
    this.limits = limits;
    this.rounds =
        new CheckRounds(
            new Instrument(started.basis(), started.percentPerKelvin()), standards.size());
    this.look = fresh();
    this.lastDeed = now;
    this.immersedAt = now;
  }

  private BeakerLook fresh() {
    return new BeakerLook(instrument(), started.tolerancePercent());
  }

  /** How it began. */
  public CheckStarted started() {
    return started;
  }

  /** Names it. */
  public String id() {
    return started.entry().check();
  }

  public CheckSubject subject() {
    return started.subject();
  }

  public Round round() {
    return rounds.round();
  }

  public Phase phase() {
    return phase;
  }

  /** Calibration in use now, and the rest. */
  public Instrument instrument() {
    return rounds.instrument();
  }

  /** All results so far, in order. */
  public List<StandardMeasured> measured() {
    return rounds.measured();
  }

  /** Of the last round that is whole; can't tell before. */
  public Verdict verdict() {
    return rounds.verdict();
  }

  /** The standard whose turn it is; empty when none is. */
  public Optional<StandardSolution> standard() {
    return phase == Phase.ROUND_DONE || phase == Phase.CLOSED
        ? Optional.empty()
        : Optional.of(standards.get(rounds.next()));
  }

  /** What to do now, in a sentence. */
  public String guide() {
    return phase == Phase.DID_YOU_MEAN
        ? question
        : phase.guide(standard().map(StandardSolution::title).orElse(""));
  }

  /** How the readings in the beaker stand, for people. */
  public String settlingWords() {
    String why = leftOut.isEmpty() ? obstacle : leftOut;
    return why.isEmpty() ? SettlingWords.of(look.state()) : why;
  }

  /** The probe has been rinsed with the standard. */
  public CheckReply rinsed(When now) {
    return step(Phase.RINSE, Phase.IMMERSE, now);
  }

  /** It is in the beaker. */
  public CheckReply immersed(When now) {
    CheckReply reply = step(Phase.IMMERSE, Phase.SETTLING, now);
    if (reply.accepted()) {
      look.restart();
      immersedAt = now;
    }
    return reply;
  }

  private CheckReply step(Phase from, Phase to, When now) {
    if (phase != from) {
      return CheckReply.refused("that is not the next step: " + guide());
    }
    phase = to;
    lastDeed = now;
    obstacle = "";
    return CheckReply.done(guide());
  }

  /**
   * What a thermometer in the beaker says: needed where the instrument sends no temperature, and
   * better than what a cheap one sends. Counts for the standard whose turn it is.
   */
  public CheckReply temperature(Thermometer reading, When now) {
    if (phase != Phase.IMMERSE && phase != Phase.SETTLING) {
      return CheckReply.refused("measure it in the standard itself: " + guide());
    }
    if (!reading.makesSense()) {
      return CheckReply.refused(
          "%s is no temperature of a beaker; type degrees Celsius, ± 5 at most"
              .formatted(reading.words()));
    }
    if (Reference.of(standards.get(rounds.next()), instrument(), reading.celsius())
        instanceof Reference.Unknown unknown) {
      return CheckReply.refused(unknown.words());
    }
    obstacle = "";
    look.thermometer(reading);
    lastDeed = now;
    return CheckReply.done("temperature %s noted".formatted(Say.celsius(reading.celsius())));
  }

  /** A reading of the probe; counts only while it settles. */
  public CheckReply reading(ProbeReading reading) {
    if (phase != Phase.SETTLING) {
      return CheckReply.done("");
    }
    if (absurd(reading.milliSiemensPerCm())) {
      leftOut =
          "reading %s mS/cm makes no sense and is left out; a display in µS/cm taken for mS/cm is 1000 times too high"
              .formatted(Say.number(reading.milliSiemensPerCm(), 4));
      return CheckReply.refused(leftOut);
    }
    leftOut = "";
    Settling.State state = look.reading(reading);
    return state instanceof Settling.Settled settled
        ? settled(settled, new When(reading.stamp().monotonicNanos(), reading.stamp().wall()))
        : CheckReply.done(SettlingWords.of(state));
  }

  /**
   * What somebody reads off a meter at rest.
   *
   * @param milliSiemensPerCm in mS/cm as displayed
   * @param celsius of the standard, °C
   */
  public CheckReply typed(double milliSiemensPerCm, double celsius, When now) {
    if (phase != Phase.SETTLING) {
      return CheckReply.refused("that is not the next step: " + guide());
    }
    if (absurd(milliSiemensPerCm)) {
      return CheckReply.refused(
          "%s mS/cm makes no sense; type what the display shows, in mS/cm"
              .formatted(Say.number(milliSiemensPerCm, 4)));
    }
    Optional<String> unit = otherUnit(milliSiemensPerCm, celsius);
    return unit.isPresent()
        ? CheckReply.refused(unit.get())
        : settled(look.typed(milliSiemensPerCm, celsius), now);
  }

  /** A number off by the size of a unit is a slip of whoever types it, not of the meter. */
  private Optional<String> otherUnit(double shown, double celsius) {
    StandardSolution standard = standards.get(rounds.next());
    if (!(Reference.of(standard, instrument(), celsius) instanceof Reference.Known known)) {
      return Optional.empty();
    }
    double right = known.reference().milliSiemensPerCm();
    String unit = near(shown / right, 1000) ? "µS/cm" : near(shown / right, 10) ? "CF" : "";
    double factor = unit.equals("CF") ? 10 : 1000;
    return unit.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "%s mS/cm is %s times what %s reads; if the display is in %s, type %s"
                .formatted(
                    Say.number(shown, 5),
                    Say.number(factor, 4),
                    standard.title(),
                    unit,
                    Say.number(shown / factor, 5)));
  }

  private static boolean near(double ratio, double factor) {
    return Math.abs(ratio / factor - 1) < AdjustmentSum.MOST_PERCENT / 100;
  }

  private static boolean absurd(double milliSiemensPerCm) {
    return !(milliSiemensPerCm >= -0.05 && milliSiemensPerCm <= 2000);
  }

  private CheckReply settled(Settling.Settled settled, When now) {
    StandardSolution standard = standards.get(rounds.next());
    StandardResult.Outcome outcome = look.result(standard, settled);
    if (outcome instanceof StandardResult.NoResult none) {
      look.restart();
      obstacle = none.words();
      return CheckReply.refused(none.words());
    }
    StandardResult result = ((StandardResult.Found) outcome).result();
    lastDeed = now;
    Optional<StandardSolution> other =
        shelf.likelier(standard, look.atItsTemperature(result), result.celsius());
    if (other.isPresent()) {
      asked = Optional.of(result);
      phase = Phase.DID_YOU_MEAN;
      question =
          "it reads %s, and that is not %s; did you mean %s?"
              .formatted(Say.conductivity(result.shown()), standard.title(), other.get().title());
      return CheckReply.done(question);
    }
    return keep(result, now);
  }

  private Entry entry(String author, When now) {
    return new Entry(id(), subject(), now.wall(), author);
  }

  private CheckReply keep(StandardResult result, When now) {
    StandardMeasured record = new StandardMeasured(entry(started.author(), now), round(), result);
    Optional<ComparisonMade> sensorToo = look.sensor(entry(started.author(), now));
    accept(record);
    String words = result.words() + "; " + guide();
    return sensorToo.isPresent()
        ? CheckReply.done(words, record, sensorToo.get())
        : CheckReply.done(words, record);
  }

  /** Takes a fact in, new or out of the records. */
  void accept(CheckEvidence record) {
    rounds.accept(record);
    asked = Optional.empty();
    obstacle = "";
    phase = rounds.whole() ? Phase.ROUND_DONE : Phase.RINSE;
    look = fresh();
  }

  /** After "did you mean …?": it is the standard that was named, whatever it reads. */
  public CheckReply reallyThat(When now) {
    if (phase != Phase.DID_YOU_MEAN || asked.isEmpty()) {
      return CheckReply.refused("nothing was asked: " + guide());
    }
    lastDeed = now;
    return keep(asked.get(), now);
  }

  /** After "did you mean …?": it was another one; the right one is to be measured now. */
  public CheckReply wrongBottle(When now) {
    if (phase != Phase.DID_YOU_MEAN) {
      return CheckReply.refused("nothing was asked: " + guide());
    }
    lastDeed = now;
    return noted("a reading in the wrong bottle was left out", "", now);
  }

  /** Back to the rinse of the same standard, with a note. */
  private CheckReply noted(String note, String advice, When now) {
    CheckNoted record = new CheckNoted(entry(CheckEvidence.BY_ITSELF, now), note);
    accept(record);
    return CheckReply.done(note + advice + "; " + guide(), record);
  }

  /** The probe has been cleaned: a new round begins. */
  public CheckReply cleaned(String author, String how, When now) {
    Optional<String> person = Persons.problem(author, how);
    if (person.isPresent()) {
      return CheckReply.refused(person.get());
    }
    if (phase != Phase.ROUND_DONE) {
      return CheckReply.refused(
          round() == Round.AS_FOUND
              ? "measure both standards as found before cleaning: how far it was off is lost otherwise"
              : "finish this round before cleaning again: " + guide());
    }
    if (rounds.adjusted()) {
      return CheckReply.refused(
          "it is adjusted already; finish this check and begin another to clean it");
    }
    ProbeCleaned record = new ProbeCleaned(entry(author, now), how, started.mark());
    accept(record);
    lastDeed = now;
    return CheckReply.done(guide(), record);
  }

  /** What an adjustment would do, or why there is none to be made. */
  public AdjustmentSum.Outcome proposal() {
    AdjustmentSum.Outcome outcome = rounds.proposal();
    return subject().kind() == CheckSubject.Kind.METER && outcome instanceof AdjustmentSum.Proposed
        ? new AdjustmentSum.Refused(
            "a meter in the hand shows what it shows: adjust it by its own means as its manual says, say so, and check again")
        : outcome;
  }

  /**
   * Adjusts as proposed, after somebody has confirmed it.
   *
   * @param adjustment names it, unique
   */
  public CheckReply adjust(String author, String adjustment, When now) {
    if (phase != Phase.ROUND_DONE) {
      return CheckReply.refused("measure all standards of this round first: " + guide());
    }
    AdjustmentSum.Outcome outcome = proposal();
    return outcome instanceof AdjustmentSum.Proposed proposed
        ? adjusted(
            CurveAdjusted.proposed(
                entry(author, now), adjustment, inUse(), proposed, started.mark()),
            now)
        : CheckReply.refused(((AdjustmentSum.Refused) outcome).words());
  }

  private CalibrationCurve inUse() {
    return instrument().basis().calibration();
  }

  /** The instrument was adjusted by its own means; our curve stays. */
  public CheckReply adjustedByInstrument(String author, String adjustment, When now) {
    return phase == Phase.ROUND_DONE
        ? adjusted(
            CurveAdjusted.byInstrument(entry(author, now), adjustment, inUse(), started.mark()),
            now)
        : CheckReply.refused("measure all standards of this round before adjusting: " + guide());
  }

  private CheckReply adjusted(CurveAdjusted record, When now) {
    Optional<String> person = Persons.problem(record.author(), record.id());
    if (person.isPresent()) {
      return CheckReply.refused(person.get());
    }
    accept(record);
    lastDeed = now;
    return CheckReply.done(record.words() + "; " + guide(), record);
  }

  /** Results of a round, weakest standard first. */
  public List<StandardResult> last(Round wanted) {
    return rounds.of(wanted);
  }

  /** Ends it. */
  public CheckReply finish(String author, When now) {
    return phase == Phase.ROUND_DONE
        ? close(author, CheckClosed.Ending.FINISHED, "", now)
        : CheckReply.refused(
            "this round is not whole: %s; or abandon the check".formatted(guide()));
  }

  /** Gives it up; what was measured stays on record. */
  public CheckReply abandon(String author, String why, When now) {
    return phase == Phase.CLOSED
        ? CheckReply.refused("the check is closed already")
        : close(author, CheckClosed.Ending.ABANDONED, why, now);
  }

  /** Time passes: call every few seconds. */
  public CheckReply tick(When now) {
    if (phase == Phase.CLOSED) {
      return CheckReply.done("");
    }
    if (now.since(lastDeed).compareTo(limits.idle()) > 0) {
      return close(
          CheckEvidence.BY_ITSELF,
          CheckClosed.Ending.TIMED_OUT,
          "nothing happened for %d minutes".formatted(now.since(lastDeed).toMinutes()),
          now);
    }
    if (phase == Phase.SETTLING && now.since(immersedAt).compareTo(limits.settle()) > 0) {
      String words =
          "%s has not come to rest in %d minutes (%s)"
              .formatted(
                  standards.get(rounds.next()).title(),
                  limits.settle().toMinutes(),
                  SettlingWords.of(look.state()));
      return noted(words, "; bring probe and standard to one temperature, shake bubbles off", now);
    }
    return CheckReply.done("");
  }

  private CheckReply close(String author, CheckClosed.Ending ending, String why, When now) {
    Optional<String> person = Persons.problem(author, why);
    if (person.isPresent()) {
      return CheckReply.refused(person.get());
    }
    CheckClosed record = new CheckClosed(entry(author, now), ending, verdict(), why);
    phase = Phase.CLOSED;
    return CheckReply.done(
        "%s, %s; %s".formatted(ending.words(), verdict().words(), guide()), record);
  }
}
