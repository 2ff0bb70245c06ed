package feedwitness.check;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/**
 * One fact about a check that must never be lost or altered. A ledger keeps it as kind, subject,
 * time, author and text fields; {@link #read} makes an equal record from the kind and the fields
 * alone. Field {@code v} is the version of the layout; newer ones are refused, not guessed at.
 */
public sealed interface CheckEvidence
    permits CheckStarted,
        StandardMeasured,
        ProbeCleaned,
        CurveAdjusted,
        CheckClosed,
        CheckNoted,
        ProbeReturned,
        ProbeReplaced,
        ProbeOutOfPlace,
        ComparisonMade,
        RangeQualified {

  /** Short lower-case word, for example {@code check-started}. */
  String kind();

  /** What every fact carries. */
  Entry entry();

  /** Probe or meter. */
  default CheckSubject subject() {
    return entry().subject();
  }

  /** Wall time. */
  default Instant at() {
    return entry().at();
  }

  /** Who did it; {@code feedwitness} where nobody did. */
  default String author() {
    return entry().author();
  }

  /** All of it as text. */
  Map<String, String> toFields();

  /** Author of what happened by itself. */
  String BY_ITSELF = "feedwitness";

  /**
   * Reads {@link #toFields()}; empty for a kind that is none of ours.
   *
   * @throws IllegalArgumentException if the fields are damaged or newer than this program
   */
  static Optional<CheckEvidence> read(String kind, Map<String, String> fields) {
    return switch (kind) {
      case CheckStarted.KIND -> Optional.of(CheckStarted.fromFields(fields));
      case StandardMeasured.KIND -> Optional.of(StandardMeasured.fromFields(fields));
      case ProbeCleaned.KIND -> Optional.of(ProbeCleaned.fromFields(fields));
      case CurveAdjusted.KIND -> Optional.of(CurveAdjusted.fromFields(fields));
      case CheckClosed.KIND -> Optional.of(CheckClosed.fromFields(fields));
      case CheckNoted.KIND -> Optional.of(CheckNoted.fromFields(fields));
      case ProbeReturned.KIND -> Optional.of(ProbeReturned.fromFields(fields));
      case ProbeReplaced.KIND -> Optional.of(ProbeReplaced.fromFields(fields));
      case ProbeOutOfPlace.KIND -> Optional.of(ProbeOutOfPlace.fromFields(fields));
      case ComparisonMade.KIND -> Optional.of(ComparisonMade.fromFields(fields));
      case RangeQualified.KIND -> Optional.of(RangeQualified.fromFields(fields));
      default -> Optional.empty();
    };
  }
}
