package feedwitness.engine;

import feedwitness.calibration.StandardShelf;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckInterval;
import feedwitness.check.CheckReply;
import feedwitness.check.CheckRequest;
import feedwitness.check.CheckSession;
import feedwitness.check.CheckSubject;
import feedwitness.check.CheckView;
import feedwitness.check.Comparisons;
import feedwitness.check.ControlChart;
import feedwitness.check.Instrument;
import feedwitness.check.ProbeHistory;
import feedwitness.check.Verdict;
import feedwitness.check.When;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Checks of probes and meters, for whoever leads through them and shows them. What is answered is
 * on disk; every method that changes something throws an {@link IOException} in words for people if
 * it cannot be kept, and then nothing was done. Safe for many threads.
 */
public interface CheckBench {

  /** Points with a probe in the order of the configuration, then meters that are on record. */
  List<CheckSubject> subjects();

  /** Bottles that are there. */
  StandardShelf shelf();

  /** How a probe or meter stands. */
  Stand stand(CheckSubject subject);

  /** All that is on record of a probe or meter. */
  ProbeHistory history(CheckSubject subject);

  /** All that is on record, oldest first. */
  List<CheckEvidence> evidence();

  /** Begins a check. */
  CheckRequest.Answer begin(Wish wish) throws IOException;

  /** Does a step of the open check of a probe or meter. */
  CheckReply act(CheckSubject subject, Deed deed) throws IOException;

  /** Adjusts as proposed. */
  CheckReply adjust(CheckSubject subject, String who, boolean byInstrument) throws IOException;

  /** Takes the last adjustment back. */
  CheckReply undo(CheckSubject subject, String who) throws IOException;

  /** Another probe or cell hangs there from now on; {@code what} may be empty. */
  CheckReply replaced(CheckSubject subject, String who, String what) throws IOException;

  /** Somebody says that the probe is back in its place. */
  CheckReply returned(CheckSubject subject, String who) throws IOException;

  /**
   * What the probe reads now beside a sample that was measured with a checked meter.
   *
   * @param meter its name on record
   * @param milliSiemensPerCm of the sample at 25 °C
   * @param celsius of the sample
   */
  Comparisons.Outcome compareSample(
      CheckSubject probe, String meter, double milliSiemensPerCm, double celsius, String who)
      throws IOException;

  /**
   * What the probe's temperature is now beside a reference thermometer in the same liquid.
   *
   * @param celsius of the thermometer, °C
   * @param accuracyKelvin half-width of its certificate, K
   */
  Comparisons.Outcome compareThermometer(
      CheckSubject probe, String thermometer, double celsius, double accuracyKelvin, String who)
      throws IOException;

  /** A step of a check. */
  @FunctionalInterface
  interface Deed {
    CheckReply in(CheckSession session, When now);
  }

  /**
   * Somebody wants to begin.
   *
   * @param standards names on the shelf
   * @param tolerancePercent NaN for the configured one
   * @param handheld of a meter; not asked for a probe
   * @param confirmed whether objections were read
   */
  record Wish(
      CheckSubject subject,
      String who,
      List<String> standards,
      double tolerancePercent,
      Instrument handheld,
      boolean confirmed) {
    public Wish {
      standards = List.copyOf(standards);
    }
  }

  /**
   * How a probe or meter stands.
   *
   * @param title for people
   * @param open the check that is on its way
   * @param verdict what the last whole check left behind
   * @param aside why its readings are kept apart now; empty if they are not
   * @param outOfPlace why it is thought to hang elsewhere
   * @param trouble why what was done last does not count, or not yet
   */
  record Stand(
      CheckSubject subject,
      String title,
      Optional<CheckView> open,
      Verdict verdict,
      CheckInterval.Due due,
      ControlChart chart,
      Optional<String> aside,
      Optional<String> outOfPlace,
      boolean undoable,
      Optional<String> trouble) {}
}
