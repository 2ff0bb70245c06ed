package feedwitness.engine;

import feedwitness.quantity.PointName;
import feedwitness.site.Band;
import feedwitness.site.StrengthOf;
import java.util.Optional;

/**
 * What a point's readings are held against now.
 *
 * @param conductivity mS/cm at 25 °C
 * @param of what those limits are on
 * @param source point that measures the water before feed; empty if there is none
 * @param temperature °C
 * @param idle why conductivity does not count at the moment; empty if it does
 * @param why where the limits come from, for people; empty if there are none
 */
public record BandNow(
    Band conductivity,
    StrengthOf of,
    Optional<PointName> source,
    Band temperature,
    Optional<String> idle,
    String why) {}
