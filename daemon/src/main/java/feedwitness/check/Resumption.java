package feedwitness.check;

import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** What becomes of a check that was open when the service stopped. */
public sealed interface Resumption {

  /**
   * It goes on: the standard that was being measured is measured again from its rinse.
   *
   * @param words for people
   */
  record Resumed(CheckSession session, String words) implements Resumption {}

  /**
   * It is closed; what was measured stays on record.
   *
   * @param evidence to be kept
   */
  record Lost(CheckClosed evidence) implements Resumption {}

  /**
   * Takes an open check up again from its records.
   *
   * @param started how it began
   * @param since all later records of the same check, in order, without an end
   */
  static Resumption of(
      CheckStarted started,
      List<CheckEvidence> since,
      StandardShelf shelf,
      CheckLimits limits,
      When now,
      ZoneId zone) {
    CheckEvidence last = since.isEmpty() ? started : since.get(since.size() - 1);
    Duration idle = Duration.between(last.at(), now.wall());
    if (standards(started, shelf).size() != started.standards().size()) {
      return lost(started, since, "a standard it used is no longer on the shelf", now);
    }
    // A clock that was set back during the restart must not keep a check open for ever.
    if (idle.isNegative() || idle.compareTo(limits.idle()) > 0) {
      return lost(
          started,
          since,
          "nothing was done from %s to %s, and the service was started again meanwhile"
              .formatted(Say.moment(last.at(), zone), Say.moment(now.wall(), zone)),
          now);
    }
    CheckSession session = rebuilt(started, since, shelf, limits, now);
    return new Resumed(
        session,
        "the check of %s goes on after a restart, %s: %s"
            .formatted(session.subject(), session.round().words(), session.guide()));
  }

  /** Back to what is on record, however long that is ago. */
  static CheckSession rebuilt(
      CheckStarted started,
      List<CheckEvidence> since,
      StandardShelf shelf,
      CheckLimits limits,
      When now) {
    CheckSession session = new CheckSession(started, standards(started, shelf), shelf, limits, now);
    since.forEach(session::accept);
    return session;
  }

  private static List<StandardSolution> standards(CheckStarted started, StandardShelf shelf) {
    List<StandardSolution> standards = new ArrayList<>();
    for (int i = 0; i < started.standards().size(); i++) {
      String title = started.titles().get(i);
      shelf
          .find(started.standards().get(i))
          .filter(standard -> standard.title().equals(title))
          .ifPresent(standards::add);
    }
    return standards;
  }

  private static Lost lost(CheckStarted started, List<CheckEvidence> since, String why, When now) {
    List<CheckEvidence> records = new ArrayList<>(List.of(started));
    records.addAll(since);
    ProbeHistory.Check check = ProbeHistory.of(started.subject(), records).checks().get(0);
    return new Lost(
        new CheckClosed(
            new Entry(
                started.entry().check(), started.subject(), now.wall(), CheckEvidence.BY_ITSELF),
            CheckClosed.Ending.LOST,
            check.verdict(),
            why));
  }
}
