package feedwitness.engine;

import feedwitness.ledger.EvidenceDraft;
import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.LineChange;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is put on record about feed lines. */
public final class LineRecords {
  /** Kind of a finding's record; its subject is the feed line. */
  public static final String FINDING = "drift";

  /** Field of a note in the journal that logs a change: which. */
  public static final String CHANGE = "change";

  /** Field of such a note: of which feed line. Its subject is the line's measuring point. */
  public static final String FEED_LINE = "feed-line";

  private LineRecords() {}

  static EvidenceDraft finding(DriftFinding finding) {
    Map<String, String> fields = new TreeMap<>();
    fields.put("kind", finding.kind().code());
    fields.put("stage", code(finding.stage()));
    fields.put("start", finding.start().toString());
    fields.put("detected", finding.detected().toString());
    fields.put("size_percent", number(finding.sizePercent()));
    fields.put("plus_minus_percent", number(finding.plusMinusPercent()));
    fields.put("confidence", finding.confidence().words());
    fields.put(
        "causes",
        finding.diagnosis().causes().stream()
            .map(likely -> code(likely.cause()))
            .collect(Collectors.joining(" ")));
    fields.put("ambiguous", Boolean.toString(finding.diagnosis().ambiguous()));
    fields.put("words", finding.words());
    return EvidenceDraft.of(FINDING, finding.feedLine().text(), fields);
  }

  /** What was known of a line had to be let go. */
  static EvidenceDraft anew(FeedLine line, String why, Instant at) {
    Map<String, String> fields = new TreeMap<>();
    fields.put("kind", DriftFinding.Kind.EVIDENCE.code());
    fields.put("stage", code(DriftFinding.Stage.NOTE));
    fields.put("start", at.toString());
    fields.put("detected", at.toString());
    fields.put("words", "%s: what is normal is learnt anew: %s".formatted(line.name(), why));
    return EvidenceDraft.of(FINDING, line.name().text(), fields);
  }

  /** A note in the journal, so that whoever reads that sees what was done. */
  static EvidenceDraft change(FeedLine line, LineChange change, String who, String note) {
    String said = note.isEmpty() ? "" : ": " + note;
    Map<String, String> fields = new TreeMap<>();
    fields.put("text", "%s, %s%s".formatted(line.title(), change.words(), said));
    fields.put("plants", "");
    fields.put("block", "");
    fields.put(CHANGE, code(change));
    fields.put(FEED_LINE, line.name().text());
    return new EvidenceDraft(
        JournalNote.KIND, line.line().text(), who, new TreeMap<>(fields), Optional.empty());
  }

  private static String code(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String number(double number) {
    return Double.isNaN(number) ? "" : String.format(Locale.ROOT, "%.2f", number);
  }
}
