package feedwitness.solution;

import feedwitness.solution.ConductivityOutcome.Refused;
import java.util.Optional;

/**
 * What is derived from the model: a value, or the input that the model refuses.
 *
 * @param <T> what was asked for
 */
public sealed interface Answer<T> {

  /** The value, if there is one. */
  Optional<T> value();

  /** Why there is no value, if so. */
  Optional<Refused> refusal();

  /** The value. */
  record Known<T>(T it) implements Answer<T> {
    @Override
    public Optional<T> value() {
      return Optional.of(it);
    }

    @Override
    public Optional<Refused> refusal() {
      return Optional.empty();
    }
  }

  /** None, and why. */
  record Unknown<T>(Refused why) implements Answer<T> {
    @Override
    public Optional<T> value() {
      return Optional.empty();
    }

    @Override
    public Optional<Refused> refusal() {
      return Optional.of(why);
    }
  }
}
