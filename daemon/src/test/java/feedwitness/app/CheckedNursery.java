package feedwitness.app;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.simulate.RunningNursery;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The virtual nursery with the whole service on it, two bottles on the shelf, for checks. */
final class CheckedNursery implements AutoCloseable {
  static final String TANK = "/api/v1/checks/probe/tank";
  static final String PEN = "/api/v1/checks/meter/pen";
  static final Instant SUNDAY = Instant.parse("2026-06-07T09:00:00Z");

  /** More than it takes to know a place. */
  private static final Duration KNOWN = Duration.ofMinutes(5);

  private final Path folder;
  private final NurseryUnderTest opened;
  final RunningNursery nursery;
  final ServiceUnderTest service;

  CheckedNursery(Path folder, Instant start, int pace) throws Exception {
    this.folder = folder;
    opened = NurseryUnderTest.open(folder, start, pace);
    nursery = opened.itself();
    service = start();
  }

  private ServiceUnderTest start() throws Exception {
    return opened.start(
        """
        [[point]]
        name = "source"
        title = "Borehole"
        place = "source"
        port = "{source}"
        profile = "pushed-csv"
        compensation = "iso7888"
        [[point]]
        name = "tank"
        title = "Mixing tank"
        place = "tank"
        port = "{bus}"
        profile = "modbus-float"
        unit = 11
        [[point]]
        name = "line"
        title = "Glasshouse line"
        place = "line"
        port = "{bus}"
        profile = "modbus-scaled"
        unit = 12
        [[alarm]]
        kind = "probe-out-of-place"
        on-delay = "0s"
        [[standard]]
        name = "low"
        solution = "KCl 0.01 mol/L"
        lot = "QE-A07"
        certificate-percent = 0.5
        [[standard]]
        name = "high"
        solution = "KCl 0.02 mol/L"
        lot = "QE-C11"
        certificate-percent = 0.5
        """);
  }

  String configuration() {
    return folder.resolve("feedwitness.toml").toString();
  }

  /** Waits until the probe has read its place for long enough to know it. */
  void settleIn(String point) throws Exception {
    List<Instant> times = new ArrayList<>();
    service.await(
        "/api/v1/points/" + point,
        now -> {
          if (now.path("state").asText().equals("reading")) {
            times.add(Instant.parse(now.path("time").asText()));
          }
          return !times.isEmpty() && times.get(0).plus(KNOWN).isBefore(times.get(times.size() - 1));
        });
  }

  private static String form(String step, String more) {
    return "{\"who\":\"Kim\",\"step\":\"%s\"%s}".formatted(step, more);
  }

  JsonNode step(String subject, String step) throws Exception {
    return service.post(subject + "/step", form(step, ""), 200);
  }

  JsonNode begin(String subject) throws Exception {
    return service.post(
        subject + "/begin",
        "{\"who\":\"Kim\",\"standards\":[\"low\",\"high\"],\"confirmed\":true}",
        201);
  }

  /** One standard at a meter in the hand: what it shows is typed. */
  JsonNode type(double milliSiemensPerCm, double celsius) throws Exception {
    step(PEN, "rinsed");
    step(PEN, "immersed");
    return service.post(
        PEN + "/step",
        form(
            "reading",
            ",\"conductivity_mS_cm\":%s,\"temperature_c\":%s"
                .formatted(milliSiemensPerCm, celsius)),
        200);
  }

  /** The pen passes its check. */
  void checkThePen() throws Exception {
    begin(PEN);
    type(1.41, 22);
    type(2.77, 22);
    step(PEN, "finish");
  }

  @Override
  public void close() {
    service.close();
    opened.close();
  }
}
