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

  static CourseJson of(CourseQuery query, History.Course course) {
    return new CourseJson(
        query.point().text(),
        Numbers.time(query.from()),
        Numbers.time(query.to()),
        Numbers.seconds(course.bucketWidth()),
        course.buckets().stream().map(Stretch::of).toList());
  }

  /** One bucket; conductivities at 25 °C. */
  record Stretch(
      String time,
      @JsonProperty("conductivity25_mS_cm") @Nullable BigDecimal mean,
      @JsonProperty("min_mS_cm") @Nullable BigDecimal min,
      @JsonProperty("max_mS_cm") @Nullable BigDecimal max,
      @JsonProperty("temperature_C") @Nullable BigDecimal temperature,
      int readings,
      int missing,
      List<String> flags) {
    Stretch {
      flags = List.copyOf(flags);
    }

    static Stretch of(Bucket bucket) {
      return new Stretch(
          Numbers.time(bucket.start()),
          Numbers.conductivity(bucket.meanMilliSiemensPerCm()),
          Numbers.conductivity(bucket.minMilliSiemensPerCm()),
          Numbers.conductivity(bucket.maxMilliSiemensPerCm()),
          Numbers.temperature(bucket.meanCelsius()),
          bucket.readings(),
          bucket.missing(),
          PointMapping.codes(bucket.flags()));
    }
  }
}
