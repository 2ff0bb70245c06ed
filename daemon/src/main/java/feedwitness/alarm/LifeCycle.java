package feedwitness.alarm;

import java.util.Optional;

/**
 * The table of the life cycle (IEC 62682, figure of the alarm state transitions): state and input
 * give the next state and what is to be told.
 */
final class LifeCycle {
  private LifeCycle() {}

  /** What can happen to an alarm, delays and deadbands already applied. */
  enum Input {
    PRESENT,
    ABSENT,
    ACKNOWLEDGE,
    /** The alarm was shelved, suppressed or out of service and counts again. */
    COUNT_AGAIN
  }

  /**
   * The outcome.
   *
   * @param told what is put on record and told; empty if nothing is
   */
  record Step(State next, Optional<Transition> told) {
    private static Step to(State next) {
      return new Step(next, Optional.empty());
    }

    private static Step to(State next, Transition told) {
      return new Step(next, Optional.of(told));
    }
  }

  /**
   * One step.
   *
   * @param asks whether the alarm needs an answer: it is no notice
   * @param counts whether it is neither shelved nor suppressed nor out of service
   */
  static Step step(State state, Input input, boolean asks, boolean counts) {
    return switch (input) {
      case PRESENT -> present(state, asks, counts);
      case ABSENT -> absent(state, counts);
      case ACKNOWLEDGE -> acknowledge(state);
      case COUNT_AGAIN -> countAgain(state, asks);
    };
  }

  /** What comes while the alarm does not count asks for no answer and is not told. */
  private static Step present(State state, boolean asks, boolean counts) {
    if (state.active()) {
      return Step.to(state);
    }
    State next = asks && (counts || state.waits()) ? State.UNACKNOWLEDGED : State.ACKNOWLEDGED;
    return counts ? Step.to(next, Transition.RAISED) : Step.to(next);
  }

  private static Step absent(State state, boolean counts) {
    if (!state.active()) {
      return Step.to(state);
    }
    State next = state.waits() ? State.RETURNED : State.NORMAL;
    return counts ? Step.to(next, Transition.CLEARED) : Step.to(next);
  }

  private static Step acknowledge(State state) {
    return switch (state) {
      case UNACKNOWLEDGED -> Step.to(State.ACKNOWLEDGED, Transition.ACKNOWLEDGED);
      case RETURNED -> Step.to(State.NORMAL, Transition.ACKNOWLEDGED);
      case NORMAL, ACKNOWLEDGED -> Step.to(state);
    };
  }

  /** A condition that outlasted the quiet needs a fresh answer, acknowledged before or not. */
  private static Step countAgain(State state, boolean asks) {
    if (!state.active()) {
      return Step.to(state);
    }
    return Step.to(asks ? State.UNACKNOWLEDGED : State.ACKNOWLEDGED, Transition.RAISED);
  }
}
