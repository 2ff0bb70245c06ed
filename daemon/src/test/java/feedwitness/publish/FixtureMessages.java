package feedwitness.publish;

import feedwitness.publish.message.MessageDesk;
import feedwitness.site.Urgency;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Two channels that stand as they do after an outage; a second test is refused. */
final class FixtureMessages implements MessageDesk {
  private boolean tested;

  @Override
  public State state() {
    return new State(
        List.of(
            new ChannelState(
                "mail",
                "grower@quarry-end.example by way of mail.quarry-end.example:587",
                Urgency.NOTE,
                3,
                1,
                2,
                Optional.of(Instant.parse("2026-06-01T21:04:00Z")),
                tested,
                Optional.of(
                    new Last(Instant.parse("2026-06-01T21:03:00Z"), false, "it fell silent"))),
            new ChannelState(
                "desk",
                "https://hooks.quarry-end.example",
                Urgency.HIGH,
                0,
                0,
                0,
                Optional.empty(),
                tested,
                Optional.empty())),
        1,
        Optional.of(Instant.parse("2026-06-02T05:00:00Z")));
  }

  @Override
  public TestOutcome test() {
    if (tested) {
      return new TestOutcome.Refused("a test message was sent just now; try again in 10 s");
    }
    tested = true;
    return new TestOutcome.Started(List.of("mail", "desk"));
  }
}
