package feedwitness.engine;

import feedwitness.site.MeasuringPoint;
import feedwitness.site.Strength;
import java.util.List;
import java.util.Optional;

/**
 * What runs at a point, and what could.
 *
 * @param why for people, such as who said so; empty if nobody did
 * @param choices strengths that are fed there
 * @param question a level that comes back and nobody has named
 */
public record FeedingStatus(
    MeasuringPoint point,
    Running running,
    String why,
    List<Strength> choices,
    BandNow band,
    Optional<Question> question) {
  public FeedingStatus {
    choices = List.copyOf(choices);
  }

  /**
   * What is to be asked.
   *
   * @param milliSiemensPerCm total, at 25 °C
   * @param times how often the line came to it
   */
  public record Question(double milliSiemensPerCm, int times, String words) {}

  /** What became of something said about feeding. */
  public sealed interface Outcome {
    record Taken(FeedingStatus now) implements Outcome {}

    /** {@code message}: item, value and remedy. */
    record Refused(String field, String message) implements Outcome {}
  }

  /** What a level that comes back is. */
  public enum Answer {
    STRENGTH,
    PLAIN_WATER,
    IGNORE
  }
}
