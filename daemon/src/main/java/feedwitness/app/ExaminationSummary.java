package feedwitness.app;

import feedwitness.quality.Flags;
import feedwitness.quality.Quality;
import feedwitness.quality.QualityFlag;
import java.io.PrintWriter;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What an examination found, in few lines. */
final class ExaminationSummary {
  private final Map<QualityFlag, Tally> tallies = new EnumMap<>(QualityFlag.class);
  private long rows;
  private long good;
  private long backward;
  private long qualified;
  private int farthest;
  private boolean unzoned;
  private @Nullable Instant first;
  private @Nullable Instant last;

  private static final class Tally {
    private long rows;
    private @Nullable Instant first;
    private @Nullable Instant last;

    void add(@Nullable Instant time) {
      rows++;
      first = first == null ? time : first;
      last = time == null ? last : time;
    }
  }

  /** Notes a row's time, in the order of the file. */
  void time(RecordedRow row) {
    Instant time = row.time();
    if (time == null) {
      return;
    }
    unzoned |= !row.zoned();
    first = first == null ? time : first;
    if (last != null && time.isBefore(last)) {
      backward++;
    }
    last = time;
  }

  /** A row got a flag from what came so many rows after it. */
  void qualified(int rowsAfter) {
    qualified++;
    farthest = Math.max(farthest, rowsAfter);
  }

  void add(@Nullable Instant time, Flags flags) {
    rows++;
    if (flags.worst() == Quality.GOOD) {
      good++;
    }
    for (QualityFlag flag : flags.list()) {
      tallies.computeIfAbsent(flag, f -> new Tally()).add(time);
    }
  }

  void print(PrintWriter out) {
    if (rows == 0) {
      out.println("No rows: the table holds a header only.");
      return;
    }
    out.printf(
        Locale.ROOT,
        "%d rows%s; nothing to say of %d of them (%s).%n",
        rows,
        first == null ? "" : " from " + first + " to " + last,
        good,
        share(good));
    tallies.forEach(
        (flag, tally) ->
            out.printf(
                Locale.ROOT,
                "  %-32s %8d rows %7s  %s%n      %s%n",
                flag.code(),
                tally.rows,
                share(tally.rows),
                tally.first == null ? "" : tally.first + " to " + tally.last,
                flag.words()));
    if (qualified > 0) {
      out.printf(
          "%d of these flags became known only by what came later, at most %d rows later.%n",
          qualified, farthest);
    }
    if (unzoned) {
      out.println("Times without a zone were taken for UTC.");
    }
    if (backward > 0) {
      out.printf(
          "The clock steps back %d times; rows were taken in the order of the file.%n", backward);
    }
  }

  private String share(long part) {
    return String.format(Locale.ROOT, "%.2f %%", 100.0 * part / rows);
  }
}
