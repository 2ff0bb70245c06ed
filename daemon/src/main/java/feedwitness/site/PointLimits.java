package feedwitness.site;

import feedwitness.quantity.PointName;
import java.time.DayOfWeek;
import java.util.Optional;
import java.util.Set;

/**
 * What a point's readings are held against while nobody has said what runs there.
 *
 * @param conductivity mS/cm at 25 °C; {@link Band#NONE} for no limits
 * @param of what the conductivity limits are on
 * @param source point that measures the water before feed is added; empty for the site's only one
 * @param temperature °C; {@link Band#NONE} for no limits
 * @param plainWaterDays days on which plain water runs, in the site's time zone
 */
public record PointLimits(
    Band conductivity,
    StrengthOf of,
    Optional<PointName> source,
    Band temperature,
    Set<DayOfWeek> plainWaterDays) {
  public static final PointLimits NONE =
      new PointLimits(Band.NONE, StrengthOf.TOTAL, Optional.empty(), Band.NONE, Set.of());

  public PointLimits {
    plainWaterDays = Set.copyOf(plainWaterDays);
  }
}
