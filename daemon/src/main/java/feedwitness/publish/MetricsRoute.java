package feedwitness.publish;

import feedwitness.alarm.Standing;
import feedwitness.engine.AlarmDesk;
import feedwitness.engine.LiveView;
import feedwitness.engine.PointStatus;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Quality;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Numbers for those who collect numbers. A point without a reading now has no sample. */
final class MetricsRoute {
  static final String OPEN = "application/openmetrics-text; version=1.0.0; charset=utf-8";
  static final String OLDER = "text/plain; version=0.0.4; charset=utf-8";

  private final LiveView live;
  private final AlarmDesk desk;

  MetricsRoute(LiveView live, AlarmDesk desk) {
    this.live = live;
    this.desk = desk;
  }

  void answer(Context context) {
    boolean open = prefersOpen(context.header("Accept"));
    context.header("Cache-Control", "no-store");
    context.header("Vary", "Accept");
    MetricsText text = new MetricsText(open);
    points(text);
    alarms(text);
    service(text);
    Answers.write(context, open ? OPEN : OLDER, text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** OpenMetrics if it is asked for at least as much as plain text. */
  static boolean prefersOpen(@Nullable String accept) {
    double open = quality(accept, "application/openmetrics-text");
    return open > 0 && open >= quality(accept, "text/plain");
  }

  private static double quality(@Nullable String accept, String type) {
    if (accept == null) {
      return 0;
    }
    double best = 0;
    for (String range : accept.toLowerCase(Locale.ROOT).split(",", -1)) {
      String[] parts = range.strip().split("\\s*;\\s*", -1);
      if (parts[0].equals(type)) {
        double q = 1;
        for (String part : parts) {
          if (part.matches("q=[01](\\.[0-9]{0,3})?")) {
            q = Double.parseDouble(part.substring(2));
          }
        }
        best = Math.max(best, q);
      }
    }
    return best;
  }

  private void points(MetricsText text) {
    text.gauge(
        "feedwitness_conductivity25_millisiemens_per_centimetre",
        "Conductivity of the solution, referred to 25 degrees Celsius.");
    each(text, Measurement::conductivity25MilliSiemensPerCm);
    text.gauge(
        "feedwitness_conductivity25_uncertainty_millisiemens_per_centimetre",
        "Twice the standard uncertainty of the conductivity.");
    each(text, m -> 2 * m.standardUncertaintyMilliSiemensPerCm());
    text.gauge("feedwitness_temperature_celsius", "Temperature of the solution.");
    each(text, Measurement::temperatureCelsius);
    text.gauge("feedwitness_reading_age_seconds", "Time since the last reading.");
    for (PointStatus point : live.points()) {
      point
          .lastReading()
          .filter(m -> m.stamp().dated())
          .ifPresent(
              m -> {
                Duration age = Duration.between(m.stamp().wall(), live.now());
                text.sample(
                    Math.max(0, age.toMillis() / 1e3), "point", point.point().name().text());
              });
    }
    text.gauge("feedwitness_quality", "1 for what the latest sample of a point is, else 0.");
    for (PointStatus point : live.points()) {
      Optional<Quality> now = point.latest().map(m -> m.flags().worst());
      for (Quality quality : now.isPresent() ? Quality.values() : new Quality[0]) {
        text.sample(
            now.get() == quality ? 1 : 0,
            "point",
            point.point().name().text(),
            "quality",
            Codes.of(quality));
      }
    }
  }

  /**
   * Only of points whose latest sample is a reading: an old number must not look like a new one.
   */
  private void each(MetricsText text, ToDoubleFunction<Measurement> what) {
    for (PointStatus point : live.points()) {
      point
          .latest()
          .map(what::applyAsDouble)
          .filter(Double::isFinite)
          .ifPresent(value -> text.sample(value, "point", point.point().name().text()));
    }
  }

  private void alarms(MetricsText text) {
    text.gauge("feedwitness_alarm_active", "1 while the condition of an alarm is there.");
    for (Standing standing : desk.alarms()) {
      alarm(text, standing, standing.state().active());
    }
    text.gauge("feedwitness_alarm_needs_answer", "1 while somebody has to answer an alarm.");
    for (Standing standing : desk.alarms()) {
      alarm(text, standing, standing.waits());
    }
  }

  private static void alarm(MetricsText text, Standing standing, boolean yes) {
    text.sample(
        yes ? 1 : 0,
        "subject",
        standing.key().subject(),
        "kind",
        standing.key().kind(),
        "priority",
        Codes.of(standing.kind().priority()));
  }

  private void service(MetricsText text) {
    LiveView.Health health = live.health();
    text.counter("feedwitness_samples_dropped", "Samples lost because the service was too slow.")
        .sample((double) health.samplesDropped())
        .gauge("feedwitness_troubles", "Things that keep the service from its work.")
        .sample(health.trouble().size())
        .gauge("feedwitness_durable_sequence", "Last sample of this start that is safe on disk.")
        .sample((double) health.durableThrough().sequence())
        .gauge("feedwitness_start_time_seconds", "When the service started, as Unix time.")
        .sample(health.startedAt().toEpochMilli() / 1e3)
        .info("feedwitness_build", "What runs.")
        .sample(1, "version", health.version());
  }
}
