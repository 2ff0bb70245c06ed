package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.publish.message.MessageDesk;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How people are reached. No secrets. */
record MessagesJson(
    List<Channel> channels,
    int unanswered,
    @JsonProperty("quiet_until") @Nullable String quietUntil) {
  MessagesJson {
    channels = List.copyOf(channels);
  }

  static MessagesJson of(MessageDesk.State state) {
    return new MessagesJson(
        state.channels().stream().map(Channel::of).toList(),
        state.unanswered(),
        state.quietUntil().map(Numbers::time).orElse(null));
  }

  /** One channel. */
  record Channel(
      String name,
      @JsonProperty("leads_to") String leadsTo,
      String least,
      int waiting,
      int open,
      int failures,
      @JsonProperty("next_attempt") @Nullable String nextAttempt,
      boolean testing,
      @Nullable Last last) {

    static Channel of(MessageDesk.ChannelState state) {
      return new Channel(
          state.name(),
          state.leadsTo(),
          Codes.of(state.least()),
          state.waiting(),
          state.open(),
          state.failures(),
          state.nextAttempt().map(Numbers::time).orElse(null),
          state.testing(),
          state.last().map(Last::of).orElse(null));
    }
  }

  /** The last attempt. */
  record Last(String at, boolean delivered, String said) {
    static Last of(MessageDesk.Last last) {
      return new Last(Numbers.time(last.at()), last.delivered(), Quoted.plain(last.said()));
    }
  }
}
