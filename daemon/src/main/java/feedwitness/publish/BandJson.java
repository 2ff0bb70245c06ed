package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.engine.AlarmDesk;
import feedwitness.engine.BandNow;
import feedwitness.quantity.PointName;
import feedwitness.site.Band;
import feedwitness.site.StrengthOf;
import java.math.BigDecimal;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Limits of a point as written outside; mS/cm at 25 °C and °C.
 *
 * @param lowTotal as total strength, to be drawn; null while the source water is not known
 */
record BandJson(
    @Nullable BigDecimal low,
    @Nullable BigDecimal high,
    @JsonProperty("low_total") @Nullable BigDecimal lowTotal,
    @JsonProperty("high_total") @Nullable BigDecimal highTotal,
    String of,
    BigDecimal deadband,
    @JsonProperty("temperature_low") @Nullable BigDecimal temperatureLow,
    @JsonProperty("temperature_high") @Nullable BigDecimal temperatureHigh,
    String why) {

  /** Null if nothing limits the point now. */
  static @Nullable BandJson of(AlarmDesk desk, PointName point) {
    Optional<BandNow> band = desk.band(point);
    return band.isEmpty() ? null : of(band.get(), desk.source(point));
  }

  static @Nullable BandJson of(BandNow band, double source) {
    if (band.conductivity().isEmpty() && band.temperature().isEmpty()) {
      return null;
    }
    Band own = band.conductivity();
    Band total = band.of() == StrengthOf.ADDED ? own.plus(source) : own;
    BigDecimal deadband = Numbers.conductivity(own.deadband());
    return new BandJson(
        Numbers.conductivity(own.low()),
        Numbers.conductivity(own.high()),
        Numbers.conductivity(total.low()),
        Numbers.conductivity(total.high()),
        Codes.of(band.of()),
        deadband == null ? BigDecimal.ZERO : deadband,
        Numbers.temperature(band.temperature().low()),
        Numbers.temperature(band.temperature().high()),
        band.why());
  }
}
