package feedwitness.engine;

import feedwitness.quantity.PointName;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.LineChange;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Feed lines, for whoever shows them or logs what was done to them. Safe for many threads. */
public interface FeedLineDesk {

  /** All feed lines as they stand, in the order of the configuration. */
  List<FeedLineStatus> feedLines();

  /** One of them. */
  Optional<FeedLineStatus> feedLine(PointName name);

  /**
   * The watch over what is stored; takes as long as there is much of it.
   *
   * @return empty if there is no such feed line
   */
  Optional<Replayed> replay(PointName name, Optional<Instant> from, Optional<Instant> to);

  /**
   * What a replay found.
   *
   * @param summary what was gone through, in one line
   */
  record Replayed(List<DriftFinding> findings, String summary) {
    public Replayed {
      findings = List.copyOf(findings);
    }
  }

  /**
   * Somebody did something to a feed line on purpose. Waits until that is safe on record, then lets
   * the watch know.
   *
   * @param who did it
   * @param note in their words; may be empty
   * @return how the line stands then; empty if there is no such feed line
   * @throws IOException in words for people, if it cannot be kept; nothing has changed then
   */
  Optional<FeedLineStatus> change(PointName name, LineChange change, String who, String note)
      throws IOException;
}
