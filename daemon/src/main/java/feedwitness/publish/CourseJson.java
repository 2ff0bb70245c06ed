package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The course of a point over a stretch of time. */
record CourseJson(
    String point,
    String from,
    String to,
    @JsonProperty("bucket_s") BigDecimal bucket,
    List<Stretch> measurements) {
  CourseJson {
    measurements = List.copyOf(measurements);
  }

  static CourseJson of(CourseQuery query, History.Course course, Corrections corrections) {
    return new CourseJson(
        query.point().text(),
        Numbers.time(query.from()),
        Numbers.time(query.to()),
        Numbers.seconds(course.bucketWidth()),
        course.buckets().stream().map(bucket -> Stretch.of(bucket, corrections)).toList());
  }

  /**
   * One bucket; conductivities at 25 °C.
   *
   * @param corrected the mean without the likely error a later check found; null if none did
   */
  record Stretch(
      String time,
      @JsonProperty("conductivity25_mS_cm") @Nullable BigDecimal mean,
      @JsonProperty("min_mS_cm") @Nullable BigDecimal min,
      @JsonProperty("max_mS_cm") @Nullable BigDecimal max,
      @JsonProperty("temperature_C") @Nullable BigDecimal temperature,
      int readings,
      int missing,
      List<String> flags,
      @JsonProperty("corrected25_mS_cm") @Nullable BigDecimal corrected) {
    Stretch {
      flags = List.copyOf(flags);
    }

    static Stretch of(Bucket bucket, Corrections corrections) {
      return new Stretch(
          Numbers.time(bucket.start()),
          Numbers.conductivity(bucket.meanMilliSiemensPerCm()),
          Numbers.conductivity(bucket.minMilliSiemensPerCm()),
          Numbers.conductivity(bucket.maxMilliSiemensPerCm()),
          Numbers.temperature(bucket.meanCelsius()),
          bucket.readings(),
          bucket.missing(),
          PointMapping.codes(bucket.flags()),
          Numbers.conductivity(
              corrections.corrected(bucket.start(), bucket.meanMilliSiemensPerCm())));
    }
  }
}
