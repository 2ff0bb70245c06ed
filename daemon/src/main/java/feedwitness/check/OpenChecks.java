package feedwitness.check;

import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Checks that are on their way, one a probe or meter. Belongs to one thread. */
public final class OpenChecks {
  private final Map<CheckSubject, CheckSession> open = new TreeMap<>();

  /**
   * Begins one, unless somebody else is at that probe.
   *
   * @param remarks objections that come from what is on record
   */
  CheckRequest.Answer begin(
      CheckRequest request, When now, CheckLimits limits, ZoneId zone, List<String> remarks) {
    CheckSession other = open.get(request.subject());
    if (other != null) {
      return new CheckRequest.Refused(
          "%s has been checking %s since %s (%s); join in there, finish it or abandon it first"
              .formatted(
                  other.started().author(),
                  request.subject(),
                  Say.moment(other.started().at(), zone),
                  other.guide()));
    }
    CheckRequest.Answer answer = request.begin(now, limits, remarks);
    if (answer instanceof CheckRequest.Begun begun) {
      open.put(request.subject(), begun.session());
    }
    return answer;
  }

  /** Takes one up again after a restart. */
  public void resume(CheckSession session) {
    open.put(session.subject(), session);
  }

  /** The check of a probe or meter, if one is open. */
  public Optional<CheckSession> of(CheckSubject subject) {
    return Optional.ofNullable(open.get(subject));
  }

  /** All of them. */
  public Collection<CheckSession> all() {
    return List.copyOf(open.values());
  }

  /** Forgets the check of a probe or meter. */
  void forget(CheckSubject subject) {
    open.remove(subject);
  }

  /** Forgets those that are closed; call after every reply. */
  public void tidy() {
    open.values().removeIf(session -> session.phase() == Phase.CLOSED);
  }
}
