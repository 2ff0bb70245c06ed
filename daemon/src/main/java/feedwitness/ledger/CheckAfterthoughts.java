package feedwitness.ledger;

import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckSubject;
import feedwitness.check.Errors;
import feedwitness.check.Mark;
import feedwitness.check.ProbeOutOfPlace;
import feedwitness.check.RangeQualified;
import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import java.util.Locale;
import java.util.Optional;

/** What checks say later of what a probe had indicated. */
public final class CheckAfterthoughts {
  private CheckAfterthoughts() {}

  /**
   * Reads a record of a check that speaks of a range.
   *
   * @throws IllegalArgumentException if it is none, or makes no sense
   */
  public static Afterthought read(Evidence record) {
    return of(record)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "record %s speaks of no range".formatted(record.key())));
  }

  /** The same; empty for records that speak of none. */
  public static Optional<Afterthought> of(Evidence record) {
    Optional<CheckEvidence> said = CheckEvidence.read(record.kind(), record.fields());
    if (said.isEmpty() || said.get().subject().kind() == CheckSubject.Kind.METER) {
      return Optional.empty();
    }
    if (said.get() instanceof RangeQualified range) {
      return Optional.of(
          thought(
              record, range, range.after(), range.through(), QualityFlag.DOUBTED, words(range)));
    }
    return said.get() instanceof ProbeOutOfPlace away
        ? Optional.of(
            thought(
                record,
                away,
                away.from(),
                before(away.to()),
                QualityFlag.OUT_OF_PLACE,
                away.note()))
        : Optional.empty();
  }

  private static Afterthought thought(
      Evidence record, CheckEvidence said, Mark after, Mark through, QualityFlag flag, String why) {
    return new Afterthought(
        record.key(),
        said.subject().name(),
        new Afterthought.Place(after.boot(), after.sequence() + 1, Optional.of(after.at())),
        new Afterthought.Place(through.boot(), through.sequence(), Optional.of(through.at())),
        Flags.of(flag),
        "What a check found later gives reason to say of it: %s; %s (record %s)."
            .formatted(flag.words(), why, record.key()));
  }

  private static Mark before(Mark back) {
    return new Mark(back.boot(), back.sequence() - 1, back.at());
  }

  private static String words(RangeQualified range) {
    Errors.Node start = range.likely(range.after().at(), Double.NaN);
    Errors.Node end = range.likely(range.through().at(), Double.NaN);
    return "%s; likely error %s at the beginning, %s at the end of the range"
        .formatted(range.note(), percent(start), percent(end));
  }

  private static String percent(Errors.Node node) {
    return String.format(
        Locale.ROOT, "%+.1f ± %.1f %%", node.percent(), 2 * node.standardPercent());
  }
}
