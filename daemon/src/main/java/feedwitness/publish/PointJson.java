package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A measuring point as written outside.
 *
 * @param state {@code reading}, {@code missing} or {@code waiting}: what the latest sample is
 * @param conductivity25 of the last reading, as are all numbers, time, age, origin and basis
 * @param uncertainty expanded: twice the standard uncertainty
 * @param flags of the latest sample, as are their words, quality and id
 * @param band limits that hold now; null if there are none
 */
record PointJson(
    String name,
    String title,
    String place,
    @Nullable ProbeJson probe,
    String state,
    @JsonProperty("conductivity25_mS_cm") @Nullable BigDecimal conductivity25,
    @JsonProperty("conductivity_mS_cm") @Nullable BigDecimal conductivity,
    @JsonProperty("uncertainty_mS_cm") @Nullable BigDecimal uncertainty,
    @JsonProperty("temperature_C") @Nullable BigDecimal temperature,
    @Nullable String time,
    @JsonProperty("age_s") @Nullable BigDecimal age,
    List<String> flags,
    @JsonProperty("flag_words") List<String> flagWords,
    String quality,
    @Nullable String origin,
    @Nullable String id,
    @Nullable MissingJson missing,
    @Nullable BasisJson basis,
    @Nullable BandJson band) {
  PointJson {
    flags = List.copyOf(flags);
    flagWords = List.copyOf(flagWords);
  }

  /** Where the probe hangs. */
  record ProbeJson(String link, String profile, int unit) {}

  /**
   * Why the latest sample has no reading.
   *
   * @param since when the last reading came; null if there never was one
   */
  record MissingJson(String cause, String words, String detail, @Nullable String since) {}

  /** What made the numbers. */
  record BasisJson(String profile, String compensation, String calibration) {}
}
