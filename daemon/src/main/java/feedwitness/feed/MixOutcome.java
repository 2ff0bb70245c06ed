package feedwitness.feed;

import java.util.List;

/** What comes of a form: sheets, and what is wrong with it. */
public sealed interface MixOutcome {

  /** It was worked out. */
  record Mixed(MixSheet sheet) implements MixOutcome {}

  /**
   * It cannot be.
   *
   * @param faults at least one
   */
  record Faulty(List<Fault> faults) implements MixOutcome {
    public Faulty {
      faults = List.copyOf(faults);
    }
  }
}
