package feedwitness.alarm;

import feedwitness.quantity.Stamp;
import java.util.Optional;

/**
 * How one alarm stands.
 *
 * @param condition as last reported
 * @param state in the life cycle
 * @param heldNanos how long the condition has been reported against the state, without what was
 *     unknown: the progress of a delay
 * @param seen when the condition was last looked at
 * @param raised when it was last raised; empty if never while it counted
 * @param changed when the state last changed
 * @param shelf set aside by somebody until a time
 * @param out taken out of service by somebody
 * @param reply the last answer to what was raised last
 */
public record Standing(
    Condition condition,
    State state,
    long heldNanos,
    Stamp seen,
    Optional<Stamp> raised,
    Stamp changed,
    Optional<Aside> shelf,
    Optional<Aside> out,
    Optional<Reply> reply) {

  /** An alarm heard of for the first time. */
  static Standing fresh(Condition condition, Stamp now) {
    return new Standing(
        condition,
        State.NORMAL,
        0,
        now,
        Optional.empty(),
        now,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  public AlarmKey key() {
    return condition.key();
  }

  public AlarmKind kind() {
    return condition.kind();
  }

  /** Whether it is neither shelved nor suppressed by design nor out of service. */
  public boolean counts() {
    return shelf.isEmpty() && out.isEmpty() && condition.suppressed().isEmpty();
  }

  /** Whether somebody has to answer it now. */
  public boolean waits() {
    return counts() && state.waits() && kind().priority().needsAnswer();
  }

  /** The condition as reported at a time; a delay goes on only while it runs against the state. */
  Standing seen(Condition now, Stamp at) {
    Presence against = state.active() ? Presence.CLEAR : Presence.ACTIVE;
    long held = heldNanos;
    if (condition.presence() == against && at.boot() == seen.boot()) {
      held += Math.max(0, at.monotonicNanos() - seen.monotonicNanos());
    }
    if (now.presence() != against && now.presence() != Presence.UNKNOWN) {
      held = 0;
    }
    return new Standing(now, state, held, at, raised, changed, shelf, out, reply);
  }

  /** In another state, with a delay begun anew. */
  Standing moved(LifeCycle.Step step, Stamp at) {
    boolean raises = step.told().filter(Transition.RAISED::equals).isPresent();
    boolean moves = raises || step.next() != state;
    return new Standing(
        condition,
        step.next(),
        moves ? 0 : heldNanos,
        seen,
        raises ? Optional.of(at) : raised,
        moves ? at : changed,
        shelf,
        out,
        raises ? Optional.empty() : reply);
  }

  Standing with(Optional<Reply> other) {
    return new Standing(condition, state, heldNanos, seen, raised, changed, shelf, out, other);
  }

  Standing aside(Optional<Aside> shelved, Optional<Aside> outOfService) {
    return new Standing(
        condition, state, heldNanos, seen, raised, changed, shelved, outOfService, reply);
  }

  /** For {@link #parse}. */
  public String toText() {
    return BookText.write(this);
  }

  /**
   * Reads {@link #toText()}.
   *
   * @throws IllegalArgumentException if the text was written by a newer program or is damaged
   */
  public static Standing parse(String text) {
    return BookText.standing(text);
  }
}
