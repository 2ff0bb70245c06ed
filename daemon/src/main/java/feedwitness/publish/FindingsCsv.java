package feedwitness.publish;

import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.List;
import java.util.Locale;

/** Findings of a feed line as a table: a line for each. */
public final class FindingsCsv {
  public static final String HEADER = "start,detected,size_percent,kind";

  private FindingsCsv() {}

  /** Whether it is printed unless everything is asked for. */
  public static boolean isTold(DriftFinding finding) {
    return finding.stage().compareTo(Stage.NOTICE) >= 0;
  }

  /** One line, without its end. */
  public static String line(DriftFinding finding) {
    return String.format(
        Locale.ROOT,
        "%s,%s,%s,%s",
        finding.start(),
        finding.detected(),
        Double.isNaN(finding.sizePercent())
            ? ""
            : String.format(Locale.ROOT, "%.1f", finding.sizePercent()),
        finding.kind().code());
  }

  /** The whole table. */
  public static String table(List<DriftFinding> findings, boolean all) {
    StringBuilder table = new StringBuilder(HEADER).append('\n');
    findings.stream()
        .filter(each -> all || isTold(each))
        .forEach(each -> table.append(line(each)).append('\n'));
    return table.toString();
  }
}
