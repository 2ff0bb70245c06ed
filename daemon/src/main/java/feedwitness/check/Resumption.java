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
    List<StandardSolution> standards = standards(started, shelf);
    CheckSession session =
        new CheckSession(
            started, standards.isEmpty() ? shelf.standards() : standards, shelf, limits, now);
    since.forEach(session::accept);
    if (standards.size() != started.standards().size()) {
      return lost(session, "a standard it used is no longer on the shelf", now);
    }
    // A clock that was set back during the restart must not keep a check open for ever.
    if (idle.isNegative() || idle.compareTo(limits.idle()) > 0) {
      return lost(
          session,
          "nothing was done from %s to %s, and the service was started again meanwhile"
              .formatted(Say.moment(last.at(), zone), Say.moment(now.wall(), zone)),
          now);
    }
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

  private static Lost lost(CheckSession session, String why, When now) {
    return new Lost(
        new CheckClosed(
            new Entry(session.id(), session.subject(), now.wall(), CheckEvidence.BY_ITSELF),
            CheckClosed.Ending.LOST,
            session.verdict(),
            why));
  }
}
