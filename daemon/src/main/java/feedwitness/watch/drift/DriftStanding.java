package feedwitness.watch.drift;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * How a feed line stands, for a page.
 *
 * @param phase where the watch is
 * @param from where what the line should carry is known from
 * @param events irrigation events that what is normal rests on
 * @param expected what the line should carry at the strength of its last event, mS/cm at 25 °C; NaN
 *     if unknown
 * @param expectedPlusMinus of it, mS/cm, nearly certain; NaN unless solved from a stock
 * @param measured what it carried, mS/cm at 25 °C; NaN before the first event
 * @param sharePercent what was delivered over what was expected, 100 is right; NaN if unknown
 * @param plusMinusPercent of it, nearly certain; NaN if unknown
 * @param ratioExpected litres of feed from one of stock that the strength of the last event takes;
 *     NaN without an injector
 * @param ratio litres of feed from one of stock that were really delivered; NaN without an injector
 *     or while that is unknown
 * @param open the finding that lasts, as it stands now, if one does; after a restart a change of
 *     the delivered share only
 * @param recent the last events, oldest first
 */
public record DriftStanding(
    Phase phase,
    From from,
    int events,
    double expected,
    double expectedPlusMinus,
    double measured,
    double sharePercent,
    double plusMinusPercent,
    double ratioExpected,
    double ratio,
    Optional<DriftFinding> open,
    List<Recent> recent) {
  public DriftStanding {
    recent = List.copyOf(recent);
  }

  /** Where what the line should carry is known from. */
  public enum From {
    RECIPE("solved from the recipe"),
    STOCK("solved from the measured stock"),
    STRENGTHS("the strength that is configured"),
    LEARNT("learnt from what is normal here"),
    NOTHING("not known yet");

    private final String words;

    From(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  /** Where the watch is. */
  public enum Phase {
    LEARNING("learning what is normal"),
    NORMAL("as usual"),
    SHIFTED("other than usual"),
    PLAIN_WATER("plain water"),
    OFF("set to inject nothing");

    private final String words;

    Phase(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  /**
   * One event.
   *
   * @param percent off what was normal then, %
   * @param strength which of the line's strengths, from 0
   */
  public record Recent(Instant start, double percent, int strength) {}
}
