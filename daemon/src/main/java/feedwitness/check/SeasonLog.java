package feedwitness.check;

import java.util.ArrayList;
import java.util.List;

/** All checks, comparisons, cleanings and adjustments as rows of a table, oldest first. */
public final class SeasonLog {
  /** Names of the columns; times in UTC, conductivity in mS/cm, temperature in °C. */
  public static final List<String> HEADING =
      List.of(
          "time_utc",
          "subject",
          "author",
          "check",
          "what",
          "against",
          "reference",
          "reading",
          "temperature_c",
          "error",
          "expanded_uncertainty",
          "tolerance",
          "unit_of_error",
          "verdict",
          "words");

  private SeasonLog() {}

  /** Each row as many cells as the heading; quoting is the caller's. */
  public static List<List<String>> rows(List<CheckEvidence> evidence) {
    List<List<String>> rows = new ArrayList<>();
    for (CheckEvidence record : evidence) {
      rows.add(row(record));
    }
    return List.copyOf(rows);
  }

  private static List<String> row(CheckEvidence record) {
    if (record instanceof StandardMeasured one) {
      StandardResult result = one.result();
      return row(
          record,
          one.round().words(),
          result.title(),
          result.reference(),
          result.shown(),
          result.celsius(),
          result.errorPercent(),
          result.expandedPercent(),
          result.tolerancePercent(),
          "%",
          result.verdict().words(),
          "");
    }
    if (record instanceof ComparisonMade one) {
      return row(
          record,
          one.type().words(),
          one.against(),
          one.reference(),
          one.value(),
          Double.NaN,
          one.error(),
          one.expanded(),
          one.tolerance(),
          one.type().unit(),
          one.verdict().words(),
          one.note());
    }
    return plain(record, words(record));
  }

  private static String words(CheckEvidence record) {
    if (record instanceof CheckStarted one) {
      return "standards: " + String.join("; ", one.titles());
    }
    if (record instanceof ProbeCleaned one) {
      return one.how();
    }
    if (record instanceof CurveAdjusted one) {
      return one.words();
    }
    if (record instanceof CheckClosed one) {
      return one.note().isBlank() ? one.ending().words() : one.ending().words() + ": " + one.note();
    }
    if (record instanceof CheckNoted one) {
      return one.note();
    }
    if (record instanceof ProbeReturned one) {
      return one.note();
    }
    if (record instanceof ProbeReplaced one) {
      return one.words();
    }
    if (record instanceof ProbeOutOfPlace one) {
      return one.note();
    }
    return record instanceof RangeQualified one ? one.note() : "";
  }

  private static List<String> plain(CheckEvidence record, String words) {
    String verdict = record instanceof CheckClosed one ? one.verdict().words() : "";
    double none = Double.NaN;
    return row(record, record.kind(), "", none, none, none, none, none, none, "", verdict, words);
  }

  private static List<String> row(
      CheckEvidence record,
      String what,
      String against,
      double reference,
      double reading,
      double celsius,
      double error,
      double expanded,
      double tolerance,
      String unit,
      String verdict,
      String words) {
    return List.of(
        record.at().toString(),
        record.subject().toText(),
        record.author(),
        record.entry().check(),
        what,
        against,
        cell(reference),
        cell(reading),
        cell(celsius),
        cell(error),
        cell(expanded),
        cell(tolerance),
        unit,
        verdict,
        words);
  }

  private static String cell(double number) {
    return Double.isNaN(number) ? "" : Say.number(number, 6).replace('−', '-');
  }
}
