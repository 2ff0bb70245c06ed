package feedwitness.feed;

import java.util.List;
import java.util.Optional;

/** What comes of a form: sheets, and what is wrong with it. */
public sealed interface MixOutcome {

  /** It was worked out: whatever the form asked for. */
  record Mixed(
      Optional<MixSheet> sheet,
      Optional<Supplement> supplement,
      Optional<Fallback> fallback,
      List<StockCheck> checks)
      implements MixOutcome {
    public Mixed {
      checks = List.copyOf(checks);
    }
  }

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
