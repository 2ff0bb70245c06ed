package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.sample.Missing;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;

@Timeout(60)
class StreamTest {
  @RegisterExtension
  final RunningServer server =
      new RunningServer(new StreamLimits(3, 64, 64, Duration.ofMillis(100)));

  private static JsonNode data(Map<String, String> event) throws IOException {
    return TestClient.JSON.readTree(event.get("data"));
  }

  @Test
  void sendsASnapshotAndThenEveryMeasurementInOrder() throws Exception {
    server.nursery().indicate(FixtureNursery.LINE, 1.4, 22);
    try (SseReader stream = new SseReader(server.port(), "Accept: text/event-stream")) {
      JsonNode points = data(stream.event("snapshot"));
      assertEquals(4, points.size());
      assertEquals("3-1", points.at("/2/id").asText());

      server.nursery().indicate(FixtureNursery.LINE, 1.5, 22);
      server.nursery().indicate(FixtureNursery.TANK, 1.6, 22);
      server.nursery().miss(FixtureNursery.LINE, Missing.Cause.SILENT, "line: silent for 3 s");

      List<String> ids = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        ids.add(stream.event("measurement").get("id"));
      }
      Map<String, String> last = stream.event("measurement");
      assertEquals(List.of("3-2", "3-3"), ids);
      assertEquals("3-4", last.get("id"));
      assertEquals("line", data(last).get("name").asText());
      assertEquals("missing", data(last).get("state").asText());
      assertEquals("1.5", data(last).get("conductivity_mS_cm").asText());
    }
  }

  @Test
  void sendsASnapshotWhateverTheClientSawLast() throws Exception {
    try (SseReader stream = new SseReader(server.port(), "Last-Event-ID: 1-17")) {
      assertEquals("snapshot", stream.event("snapshot").get("event"));
    }
  }

  @Test
  void carriesTheSafetyHeadersAndNoLength() throws Exception {
    try (SseReader stream = new SseReader(server.port(), "Accept: text/event-stream")) {
      assertTrue(stream.head().startsWith("HTTP/1.1 200"), stream::head);
      assertTrue(stream.head().contains("Content-Type: text/event-stream"), stream::head);
      SafetyHeaders.ALL.forEach(
          (name, value) -> assertTrue(stream.head().contains(name + ": " + value + "\n"), name));
    }
  }

  @Test
  void streamsToAClientThatDoesNotSayWhatItAccepts() throws Exception {
    try (SseReader silent = new SseReader(server.port());
        SseReader anything = new SseReader(server.port(), "Accept: */*")) {
      assertNotNull(silent.event("snapshot"));
      assertNotNull(anything.event("snapshot"));
    }
    HttpResponse<String> other =
        server.client().get("/api/v1/stream", "Accept", "application/json");
    assertTrue(TestClient.problem(406, other).get("detail").asText().contains("text/event-stream"));
  }

  @Test
  void opensNoStreamForOneWhoOnlyAsksForTheHead() throws Exception {
    HttpResponse<String> head =
        server
            .client()
            .send("HEAD", "/api/v1/stream", java.net.http.HttpRequest.BodyPublishers.noBody());
    assertEquals(200, head.statusCode());
    assertEquals("text/event-stream", head.headers().firstValue("Content-Type").orElse(""));
    assertEquals(0, server.server().openStreams());
  }

  @Test
  void pingsWhileNothingHappens() throws Exception {
    try (SseReader stream = new SseReader(server.port())) {
      stream.event("snapshot");
      Map<String, String> ping = stream.next();
      assertNotNull(ping);
      assertEquals("still here", ping.get(""));
    }
  }

  @Test
  void refusesOneStreamTooMany() throws Exception {
    List<SseReader> streams = new ArrayList<>();
    try {
      for (int i = 0; i < 3; i++) {
        SseReader stream = new SseReader(server.port());
        stream.event("snapshot");
        streams.add(stream);
      }
      JsonNode problem = TestClient.problem(503, server.client().get("/api/v1/stream"));
      assertTrue(problem.get("detail").asText().startsWith("3 pages are watching"));
      assertEquals(200, server.client().get("/health").statusCode());

      streams.remove(0).close();
      while (server.server().openStreams() == 3) {
        Thread.onSpinWait();
      }
      try (SseReader next = new SseReader(server.port())) {
        next.event("snapshot");
      }
    } finally {
      for (SseReader stream : streams) {
        stream.close();
      }
    }
  }

  @Test
  void dropsAClientThatDoesNotReadAndDelaysNobody() throws Exception {
    try (SseReader stalled = new SseReader(server.port());
        SseReader reading = new SseReader(server.port())) {
      reading.event("snapshot");
      assertEquals(2, server.server().openStreams());
      int sent = 0;
      while (server.server().openStreams() == 2) {
        assertTrue(++sent < 100_000, "the stalled client was never dropped");
        String id = server.nursery().indicate(FixtureNursery.LINE, 1.5, 22).stamp().id();
        assertEquals(id, reading.event("measurement").get("id"));
      }
      String id = server.nursery().indicate(FixtureNursery.LINE, 1.5, 22).stamp().id();
      assertEquals(id, reading.event("measurement").get("id"));
      assertEquals(200, server.client().get("/api/v1/points").statusCode());
      assertTrue(stalled.head().startsWith("HTTP/1.1 200"));
    }
  }

  @Test
  void tellsPagesToLoadAfreshWhenAPointWasAdded() throws Exception {
    try (SseReader stream = new SseReader(server.port())) {
      stream.event("snapshot");
      HttpResponse<String> saved =
          server.client().post("/api/v1/setup/points", SetupTest.HAND_TYPED);
      assertEquals(201, saved.statusCode(), saved::body);
      assertNotNull(stream.event("reset"));
    }
  }

  @Test
  void endsItsStreamsWhenItStops() throws Exception {
    try (SseReader reading = new SseReader(server.port());
        SseReader stalled = new SseReader(server.port())) {
      reading.event("snapshot");
      server.server().close();
      Map<String, String> next = reading.next();
      while (next != null) {
        next = reading.next();
      }
      assertNull(next);
      assertEquals(0, server.server().openStreams());
      assertEquals(0, server.nursery().listeners());
      assertTrue(stalled.head().startsWith("HTTP/1.1 200"));
    }
  }

  @Test
  void stopsWhileAClientDoesNotRead() throws Exception {
    try (SseReader stalled = new SseReader(server.port())) {
      for (int i = 0; i < 20_000 && server.server().openStreams() == 1; i++) {
        server.nursery().indicate(FixtureNursery.LINE, 1.5, 22);
      }
      server.server().close();
      assertEquals(0, server.server().openStreams());
      assertTrue(stalled.head().startsWith("HTTP/1.1 200"));
    }
  }
}
