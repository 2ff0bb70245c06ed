package feedwitness.site;

import feedwitness.quantity.PointName;
import java.util.Optional;

/**
 * A place with a probe, or a name for hand readings.
 *
 * @param title for people
 * @param place what is measured there
 * @param probe empty for a point whose readings are typed in
 * @param compensation how its conductivity is referred to 25 °C
 * @param limits what its readings are held against
 */
public record MeasuringPoint(
    PointName name,
    String title,
    Place place,
    Optional<ProbeMount> probe,
    CompensationChoice compensation,
    PointLimits limits) {

  /** Without limits. */
  public MeasuringPoint(
      PointName name,
      String title,
      Place place,
      Optional<ProbeMount> probe,
      CompensationChoice compensation) {
    this(name, title, place, probe, compensation, PointLimits.NONE);
  }

  /** What is measured at a point. */
  public enum Place {
    SOURCE,
    TANK,
    LINE,
    DRAIN,
    OTHER
  }
}
