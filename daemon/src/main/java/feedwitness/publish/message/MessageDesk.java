package feedwitness.publish.message;

import feedwitness.site.Urgency;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What people are told and how it goes, for whoever shows it. Safe for many threads. */
public interface MessageDesk {

  /** How things stand; nothing secret. */
  State state();

  /** Sends a test message over every channel; how it went shows in {@link #state}. */
  TestOutcome test();

  /**
   * How things stand.
   *
   * @param unanswered alarms nobody has acknowledged yet
   * @param quietUntil end of the quiet hours if it is quiet now
   */
  record State(List<ChannelState> channels, int unanswered, Optional<Instant> quietUntil) {
    public State {
      channels = List.copyOf(channels);
    }
  }

  /**
   * How a channel stands.
   *
   * @param leadsTo where it leads, for people
   * @param least what it tells
   * @param waiting notices that gather, or wait for quiet hours to end or letters to leave
   * @param open messages composed and not delivered yet
   * @param failures attempts in a row that failed
   * @param nextAttempt when the next attempt will be, if one waits
   * @param testing whether a test message is on its way
   * @param last what became of the last attempt; empty before the first since the start
   */
  record ChannelState(
      String name,
      String leadsTo,
      Urgency least,
      int waiting,
      int open,
      int failures,
      Optional<Instant> nextAttempt,
      boolean testing,
      Optional<Last> last) {}

  /**
   * What became of an attempt.
   *
   * @param said by the receiver or about it, for people
   */
  record Last(Instant at, boolean delivered, String said) {}

  /** What became of pressing the test button. */
  sealed interface TestOutcome {
    /** On its way. */
    record Started(List<String> channels) implements TestOutcome {
      public Started {
        channels = List.copyOf(channels);
      }
    }

    /** Nothing was sent. */
    record Refused(String why) implements TestOutcome {}
  }
}
