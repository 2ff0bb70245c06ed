package feedwitness.check;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A check on its way as somebody at the probe sees it.
 *
 * @param standard whose turn it is, for people; empty when none is
 * @param guide what to do now
 * @param settling how readings stand, while they settle
 * @param results one line a result so far
 * @param verdict of the last whole round
 * @param adjustment what an adjustment would do, or why there is none; empty before a round is
 *     whole
 */
public record CheckView(
    String id,
    CheckSubject subject,
    String author,
    Instant begun,
    Round round,
    Phase phase,
    Optional<String> standard,
    String guide,
    Optional<String> settling,
    List<String> results,
    Verdict verdict,
    Optional<String> adjustment) {
  public CheckView {
    results = List.copyOf(results);
  }

  /** As it stands. */
  public static CheckView of(CheckSession session) {
    return new CheckView(
        session.id(),
        session.subject(),
        session.started().author(),
        session.started().at(),
        session.round(),
        session.phase(),
        session.standard().map(standard -> standard.title()),
        session.guide(),
        session.phase() == Phase.SETTLING ? Optional.of(session.settlingWords()) : Optional.empty(),
        session.measured().stream()
            .map(one -> one.round().words() + ", " + one.result().words())
            .toList(),
        session.verdict(),
        session.phase() == Phase.ROUND_DONE
            ? Optional.of(words(session.proposal()))
            : Optional.empty());
  }

  private static String words(AdjustmentSum.Outcome outcome) {
    return outcome instanceof AdjustmentSum.Proposed proposed
        ? proposed.words()
        : ((AdjustmentSum.Refused) outcome).words();
  }
}
