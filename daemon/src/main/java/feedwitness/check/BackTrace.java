package feedwitness.check;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a failed check says of the measurements since the last good one. Between two checks the
 * error is taken to have grown in a straight line; a cleaning or an adjustment in between breaks
 * that, and each stretch is qualified by itself.
 */
public final class BackTrace {
  private BackTrace() {}

  /** Where the error of a probe was known. */
  public record Known(Mark mark, Errors errors) {}

  /**
   * Qualifies everything after {@code good} up to {@code failed}.
   *
   * @param cause the failed check, and when and by whom it was made
   * @param good what the last good check left behind
   * @param failed what was found, before anything was cleaned
   * @param breaks cleanings and adjustments; those outside the two are ignored
   */
  public static List<RangeQualified> qualify(
      Entry cause, Known good, Known failed, List<Mark> breaks, ZoneId zone) {
    if (failed.mark().compareTo(good.mark()) <= 0) {
      return List.of();
    }
    List<Mark> bounds =
        Stream.concat(
                Stream.of(good.mark(), failed.mark()),
                breaks.stream()
                    .filter(mark -> mark.compareTo(good.mark()) > 0)
                    .filter(mark -> mark.compareTo(failed.mark()) < 0))
            .sorted(Comparator.naturalOrder())
            .distinct()
            .toList();
    List<RangeQualified> ranges = new ArrayList<>();
    for (int i = 1; i < bounds.size(); i++) {
      RangeQualified.Shape shape = shape(i == 1, i == bounds.size() - 1);
      ranges.add(
          new RangeQualified(
              cause,
              bounds.get(i - 1),
              bounds.get(i),
              shape,
              good.errors(),
              failed.errors(),
              words(cause, shape, good.errors(), failed, zone)));
    }
    return ranges;
  }

  private static RangeQualified.Shape shape(boolean first, boolean last) {
    if (first && last) {
      return RangeQualified.Shape.INTERPOLATED;
    }
    if (first) {
      return RangeQualified.Shape.START_KNOWN;
    }
    return last ? RangeQualified.Shape.END_KNOWN : RangeQualified.Shape.UNKNOWN;
  }

  private static String words(
      Entry cause, RangeQualified.Shape shape, Errors start, Known failed, ZoneId zone) {
    String when = Say.moment(failed.mark().at(), zone);
    String from = Say.error(start.at(Double.NaN).percent());
    String to = Say.error(failed.errors().at(Double.NaN).percent());
    return switch (shape) {
      case INTERPOLATED ->
          "the check of %s found it %s on %s, after %s at the last good check; likely it went from one to the other in a straight line"
              .formatted(cause.subject(), to, when, from);
      case START_KNOWN ->
          "it was %s at the last good check and was cleaned or adjusted before the next; how far it went meanwhile is not known"
              .formatted(from);
      case END_KNOWN ->
          "the check of %s found it %s on %s; since the cleaning or adjustment before that it was likely off by up to as much"
              .formatted(cause.subject(), to, when);
      case UNKNOWN -> "between two cleanings or adjustments nothing was measured; can't tell";
    };
  }

  /**
   * The same from a probe's records: the newest check, if it failed as found. Measurements up to
   * the last check that left it good, or that was itself traced back, are not touched; checks in
   * between that could not tell lend their errors to the line.
   *
   * <p>Nothing goes back beyond a replacement: those are another probe's readings.
   *
   * @param first first measurement there is of it; everything since then is in doubt if it was
   *     never checked before
   * @param zone for times in words
   */
  public static List<RangeQualified> ofNewest(
      ProbeHistory history, Optional<Mark> first, ZoneId zone) {
    ProbeHistory own = history.ofPresentProbe();
    Optional<Mark> since = history.replaced().map(ProbeReplaced::mark).orElse(first);
    List<ProbeHistory.Check> checks = own.checks();
    if (checks.isEmpty()) {
      return List.of();
    }
    ProbeHistory.Check newest = checks.get(checks.size() - 1);
    Optional<Known> failed = asFound(newest);
    if (newest.verdict(Round.AS_FOUND) != Verdict.FAIL || failed.isEmpty()) {
      return List.of();
    }
    List<RangeQualified> ranges = new ArrayList<>();
    Known end = failed.get();
    for (int i = checks.size() - 2; i >= 0; i--) {
      ProbeHistory.Check check = checks.get(i);
      Optional<Known> found = asFound(check);
      Optional<Mark> back = check.back();
      if (found.isEmpty() || back.isEmpty() || check.errors().isEmpty()) {
        continue;
      }
      Known left = new Known(back.get(), check.errors().get());
      ranges.addAll(0, qualify(newest.cause(), left, end, own.breaks(), zone));
      if (check.verdict() == Verdict.PASS || check.verdict(Round.AS_FOUND) != Verdict.CANT_TELL) {
        return ranges;
      }
      end = found.get();
    }
    Known earliest = end;
    since
        .filter(mark -> mark.compareTo(earliest.mark()) < 0)
        .ifPresent(
            mark ->
                ranges.addAll(0, neverChecked(newest.cause(), mark, earliest, own.breaks(), zone)));
    return ranges;
  }

  private static Optional<Known> asFound(ProbeHistory.Check check) {
    return check
        .started()
        .mark()
        .flatMap(mark -> check.errors(Round.AS_FOUND).map(errors -> new Known(mark, errors)));
  }

  private static List<RangeQualified> neverChecked(
      Entry cause, Mark first, Known failed, List<Mark> breaks, ZoneId zone) {
    List<RangeQualified> ranges = new ArrayList<>();
    for (RangeQualified range :
        qualify(cause, new Known(first, failed.errors()), failed, breaks, zone)) {
      RangeQualified.Shape shape =
          range.through().equals(failed.mark())
              ? RangeQualified.Shape.END_KNOWN
              : RangeQualified.Shape.UNKNOWN;
      ranges.add(
          new RangeQualified(
              cause,
              range.after(),
              range.through(),
              shape,
              range.start(),
              range.end(),
              "there was no good check before; "
                  + words(cause, shape, failed.errors(), failed, zone)));
    }
    return ranges;
  }
}
