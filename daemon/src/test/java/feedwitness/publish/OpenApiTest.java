package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.sample.Missing;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The description of the interface, held against what the service really does. */
class OpenApiTest {
  private static final String TYPED =
      "{\"conductivity\":1930,\"unit\":\"µS/cm\",\"temperature\":21.5,\"temperature_unit\":\"°C\","
          + "\"compensated\":\"not-at-all\"}";
  private static final String LISTEN =
      "{\"link\":\"/dev/serial/by-id/usb-tank\",\"profile\":\"line-push\",\"unit\":1,"
          + "\"seconds\":1}";
  private static final String SAID = "{\"who\":\"Kim\",\"note\":\"injector reset\"}";
  private static final String WHO = "{\"who\":\"Kim\"}";
  private static final String SHELVING = "{\"who\":\"Kim\",\"note\":\"\",\"minutes\":60}";
  private static final String FEEDING =
      "{\"who\":\"Kim\",\"point\":\"line\",\"what\":\"strength\",\"strength\":\"growing-on\"}";
  private static final String CHECK =
      "{\"who\":\"Kim\",\"standards\":[\"low\",\"high\"],\"confirmed\":true}";
  private static final String STEP = "{\"who\":\"Kim\",\"step\":\"rinsed\"}";
  private static final String COMPARISON =
      "{\"who\":\"Kim\",\"against\":\"thermometer\",\"name\":\"glass\",\"temperature_c\":20.1}";
  private static final Set<String> METHODS = Set.of("get", "post", "put", "patch", "delete");

  @RegisterExtension final RunningServer server = new RunningServer();
  private JsonNode description = TestClient.JSON.nullNode();

  @BeforeEach
  void fetchAndFillTheNursery() throws Exception {
    description = TestClient.json(server.client().get("/api/v1/openapi.json"));
    server.nursery().indicate(FixtureNursery.LINE, 1.4, 22);
    server.nursery().wait(Duration.ofSeconds(1));
    server.nursery().indicate(FixtureNursery.LINE, 1.5, Double.NaN);
    server.nursery().miss(FixtureNursery.SOURCE, Missing.Cause.NO_SUCH_PORT, "source: no port");
    server.nursery().indicate(FixtureNursery.TANK, 1.5, 22);
    server.nursery().miss(FixtureNursery.TANK, Missing.Cause.CABLE_PULLED, "tank: plug it in");
  }

  private Set<String> described() {
    Set<String> described = new TreeSet<>();
    for (Map.Entry<String, JsonNode> path : description.get("paths").properties()) {
      for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
        if (METHODS.contains(operation.getKey())) {
          described.add(operation.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey());
        }
      }
    }
    return described;
  }

  @Test
  void describesEveryRouteAndNoOther() {
    Set<String> registered =
        server.server().routes().stream()
            .map(route -> route.method.name() + " " + route.path)
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(registered, described());
  }

  @Test
  void everyReferenceLeadsSomewhere() {
    SchemaChecker checker = new SchemaChecker(description);
    List<JsonNode> references = description.findValues("$ref");
    assertFalse(references.isEmpty());
    references.forEach(reference -> checker.resolve(reference.asText()));
    Set<String> operations =
        description.findValuesAsText("operationId").stream().collect(Collectors.toSet());
    assertEquals(described().size(), operations.size());
  }

  @Test
  void answersAsDescribed() throws Exception {
    fits("get", "/health", server.client().get("/health"));
    fits("get", "/api/v1/site", server.client().get("/api/v1/site"));
    fits("get", "/api/v1/points", server.client().get("/api/v1/points"));
    fits("get", "/api/v1/points/{name}", server.client().get("/api/v1/points/line"));
    fits("get", "/api/v1/setup/ports", server.client().get("/api/v1/setup/ports"));
    fits("get", "/api/v1/setup/profiles", server.client().get("/api/v1/setup/profiles"));
    fits("get", "/api/v1/messages", server.client().get("/api/v1/messages"));
    fits("post", "/api/v1/messages/test", server.client().post("/api/v1/messages/test", "{}"));
    fits("post", "/api/v1/messages/test", server.client().post("/api/v1/messages/test", "{}"));
    fits("get", "/api/v1/openapi.json", server.client().get("/api/v1/openapi.json"));
    for (String query : new String[] {"", "?points=1"}) {
      fits(
          "get",
          "/api/v1/points/{name}/measurements",
          server.client().get("/api/v1/points/line/measurements" + query));
    }
    for (String point : new String[] {"line", "source", "tank"}) {
      fits(
          "get",
          "/api/v1/points/{name}/explain",
          server.client().get("/api/v1/points/" + point + "/explain"));
    }
    fits(
        "post",
        "/api/v1/points/{name}/readings",
        server.client().post("/api/v1/points/drain/readings", TYPED));
    fits("get", "/api/v1/fertilizers", server.client().get("/api/v1/fertilizers"));
    fits("post", "/api/v1/mix", server.client().post("/api/v1/mix", MixTest.ONE_BAG));
    fits("post", "/api/v1/mix", server.client().post("/api/v1/mix", MixTest.STOCKS));
    fits("post", "/api/v1/mix", server.client().post("/api/v1/mix", MixTest.ASIDE));
    fits("post", "/api/v1/mix", server.client().post("/api/v1/mix", "{}"));
    fits("post", "/api/v1/setup/listen", server.client().post("/api/v1/setup/listen", LISTEN));
    fits(
        "post",
        "/api/v1/setup/points",
        server.client().post("/api/v1/setup/points", SetupTest.HAND_TYPED));
  }

  @Test
  void answersAboutAlarmsAsDescribed() throws Exception {
    String alarm = "/api/v1/alarms/line/conductivity-high";
    String path = "/api/v1/alarms/{subject}/{kind}";
    server.nursery().indicate(FixtureNursery.LINE, 2.9, 25);
    server.pass(61);
    fits("get", "/api/v1/alarms", server.client().get("/api/v1/alarms"));
    fits("post", path + "/acknowledge", server.client().post(alarm + "/acknowledge", SAID));
    fits("post", path + "/undo", server.client().post(alarm + "/undo", WHO));
    fits("post", path + "/shelve", server.client().post(alarm + "/shelve", SHELVING));
    fits("post", path + "/unshelve", server.client().post(alarm + "/unshelve", WHO));
    fits("post", path + "/out-of-service", server.client().post(alarm + "/out-of-service", SAID));
    fits("post", path + "/in-service", server.client().post(alarm + "/in-service", SAID));
    fits("post", path + "/undo", server.client().post("/api/v1/alarms/line/x/undo", WHO));
    fits("post", "/api/v1/journal", server.client().post("/api/v1/journal", JournalTest.NOTE));
    fits("post", "/api/v1/feeding", server.client().post("/api/v1/feeding", FEEDING));
    fits("get", "/api/v1/feeding", server.client().get("/api/v1/feeding"));
    fits("post", "/api/v1/feeding/level", server.client().post("/api/v1/feeding/level", "{}"));
    fits("get", "/api/v1/journal", server.client().get("/api/v1/journal"));
    fits("get", "/api/v1/journal/{number}", server.client().get("/api/v1/journal/2"));
    fits("get", "/api/v1/points", server.client().get("/api/v1/points"));
  }

  @Test
  void answersAboutChecksAsDescribed() throws Exception {
    String check = "/api/v1/checks/probe/line";
    String path = "/api/v1/checks/{kind}/{name}";
    fits("get", "/api/v1/checks", server.client().get("/api/v1/checks"));
    fits("post", path + "/begin", server.client().post(check + "/begin", "{}"));
    fits("post", path + "/begin", server.client().post(check + "/begin", CHECK));
    fits("get", path, server.client().get(check));
    fits("post", path + "/step", server.client().post(check + "/step", STEP));
    fits("post", path + "/compare", server.client().post(check + "/compare", COMPARISON));
    fits("get", path, server.client().get("/api/v1/checks/probe/pond"));
    fits("get", path, server.client().get("/api/v1/checks/meter/pen"));
    String id = TestClient.json(server.client().get(check)).at("/open/id").asText();
    fits("get", "/api/v1/check-records/{id}", server.client().get("/api/v1/check-records/" + id));
    fits("get", "/api/v1/check-records/{id}", server.client().get("/api/v1/check-records/none"));
  }

  @Test
  void answersAboutFeedLinesAsDescribed() throws Exception {
    String path = "/api/v1/feed-lines/{name}/changes";
    String changes = "/api/v1/feed-lines/glasshouse/changes";
    server.water(12, 1.5);
    server.water(4, 1.2);
    fits("get", "/api/v1/feed-lines", server.client().get("/api/v1/feed-lines"));
    String replay = "/api/v1/feed-lines/{name}/replay";
    fits("get", replay, server.client().get("/api/v1/feed-lines/glasshouse/replay?from=then"));
    fits("get", replay, server.client().get("/api/v1/feed-lines/x/replay"));
    fits("post", path, server.client().post(changes, FeedLinesTest.SERVICED));
    fits("post", path, server.client().post(changes, "{}"));
    fits("post", path, server.client().post("/api/v1/feed-lines/x/changes", "{}"));
    fits("NewLineChange", FeedLinesTest.SERVICED);
  }

  @Test
  void streamsAlarmsAndFeedingAsDescribed() throws Exception {
    try (SseReader stream = new SseReader(server.port())) {
      stream.event("snapshot");
      server.nursery().indicate(FixtureNursery.LINE, 2.9, 25);
      server.pass(61);
      fits("AlarmEvent", stream.data("alarm"));
      server.client().post("/api/v1/feeding", FEEDING);
      fits("Feeding", stream.data("feeding"));
    }
  }

  @Test
  void refusesAsDescribed() throws Exception {
    fits("get", "/api/v1/points/{name}", server.client().get("/api/v1/points/pond"));
    fits(
        "get",
        "/api/v1/points/{name}/measurements",
        server.client().get("/api/v1/points/line/measurements?points=0"));
    fits(
        "get",
        "/api/v1/stream",
        server.client().get("/api/v1/stream", "Accept", "application/json"));
    fits("post", "/api/v1/setup/listen", server.client().post("/api/v1/setup/listen", "{}"));
  }

  @Test
  void streamsPointsAsDescribed() throws Exception {
    try (SseReader stream = new SseReader(server.port())) {
      fits("Points", stream.data("snapshot"));
      server.nursery().indicate(FixtureNursery.LINE, 1.5, 22);
      fits("Point", stream.data("measurement"));
    }
  }

  @Test
  void describesTheBodiesThatAreTaken() throws Exception {
    fits("TypedReading", TYPED);
    fits("ListenRequest", LISTEN);
    fits("MixForm", MixTest.ONE_BAG);
    fits("MixForm", MixTest.STOCKS);
    fits("MixForm", MixTest.ASIDE);
    fits("NewPoint", SetupTest.HAND_TYPED);
    fits("NewPoint", SetupTest.PROBE);
    fits("Said", SAID);
    fits("Who", WHO);
    fits("Shelving", SHELVING);
    fits("NewNote", JournalTest.NOTE);
    fits("NewNote", JournalTest.withPhoto("image/jpeg", new byte[] {1, 2, 3}));
    fits("NewFeeding", FEEDING);
    fits("NewCheck", CHECK);
    fits("CheckStep", STEP);
    fits("NewComparison", COMPARISON);
  }

  private void fits(String schema, String json) throws Exception {
    JsonNode node = description.at("/components/schemas/" + schema);
    JsonNode value = TestClient.JSON.readTree(json);
    assertEquals(List.of(), new SchemaChecker(description).faults(node, value, schema));
  }

  private void fits(String method, String path, HttpResponse<String> answer) throws Exception {
    SchemaChecker checker = new SchemaChecker(description);
    JsonNode responses = description.get("paths").get(path).get(method).get("responses");
    JsonNode response = responses.path(String.valueOf(answer.statusCode()));
    assertFalse(response.isMissingNode(), method + " " + path + " " + answer.statusCode());
    if (response.has("$ref")) {
      response = checker.resolve(response.get("$ref").asText());
    }
    String sent = answer.headers().firstValue("Content-Type").orElse("").split(";", 2)[0];
    JsonNode content = response.get("content").path(sent);
    assertFalse(content.isMissingNode(), sent + " of " + path);
    assertEquals(List.of(), checker.faults(content.get("schema"), TestClient.json(answer), path));
  }
}
