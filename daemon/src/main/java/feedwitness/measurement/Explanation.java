package feedwitness.measurement;

import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A measurement taken apart again, from the wire to the flags, in words for whoever grows plants
 * and in numbers for whoever wants to reckon after us.
 *
 * @param messages what it was read from, in order; empty if that is no longer remembered
 * @param steps in the order in which the number was made
 * @param budget empty where there is no value at 25 °C
 */
public record Explanation(
    Measurement measurement,
    List<Octets> messages,
    List<Step> steps,
    Optional<UncertaintyBudget> budget) {
  public Explanation {
    messages = List.copyOf(messages);
    steps = List.copyOf(steps);
  }

  /**
   * Takes a measurement apart.
   *
   * @param messages as far as they are remembered
   */
  public static Explanation of(Measurement measurement, List<Octets> messages) {
    return of(measurement, messages, List.of());
  }

  /**
   * The same, with what was said of it afterwards.
   *
   * @param later one sentence each
   */
  public static Explanation of(Measurement measurement, List<Octets> messages, List<String> later) {
    Optional<UncertaintyBudget> budget = UncertaintyBudget.of(measurement);
    List<Step> steps = new ArrayList<>(ExplanationWords.steps(measurement, messages, budget));
    later.forEach(words -> steps.add(new Step(Stage.LATER, words)));
    return new Explanation(measurement, messages, steps, budget);
  }

  /** One step, in one or a few sentences. */
  public record Step(Stage stage, String words) {}

  /** The steps there are. */
  public enum Stage {
    OCTETS,
    INDICATION,
    BASIS,
    CORRECTION,
    COMPENSATION,
    UNCERTAINTY,
    FLAGS,
    /** What was said of it afterwards. */
    LATER
  }
}
