package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;

@Timeout(120)
class JournalTest {
  static final String NOTE =
      "{\"author\":\"Kim\",\"point\":\"line\",\"block\":\"bench-3\",\"text\":\"Flushed the line\","
          + "\"plants\":\"leaf edges brown\"}";
  private static final byte[] JPEG = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, 'a', 'b', 'c'};

  @RegisterExtension final RunningServer server = new RunningServer();

  private HttpResponse<String> write(String body) throws Exception {
    return server.client().post("/api/v1/journal", body);
  }

  private JsonNode journal(String query) throws Exception {
    return TestClient.json(server.client().get("/api/v1/journal" + query));
  }

  static String withPhoto(String type, byte[] octets) {
    return "{\"author\":\"Kim\",\"text\":\"see\",\"photo\":{\"media_type\":\"%s\",\"base64\":\"%s\"}}"
        .formatted(type, Base64.getEncoder().encodeToString(octets));
  }

  @Test
  void keepsWhatSomebodyWrote() throws Exception {
    HttpResponse<String> answer = write(NOTE);
    assertEquals(201, answer.statusCode(), answer::body);
    String place = answer.headers().firstValue("Location").orElse("");
    JsonNode note = TestClient.json(server.client().get(place));
    assertEquals("Flushed the line", note.get("text").asText());
    assertEquals("leaf edges brown", note.get("plants").asText());
    assertEquals("bench-3", note.get("block").asText());
    assertEquals(note, journal("?kind=note").at("/entries/0"));
    assertEquals(note, journal("?block=bench-3").at("/entries/0"));
    assertEquals(0, journal("?block=bench-4").get("entries").size());
    assertEquals(0, journal("?point=tank").get("entries").size());
  }

  @Test
  void tellsWhatHappenedToAnAlarmAndWhatWasFed() throws Exception {
    server.nursery().indicate(FixtureNursery.LINE, 2.86, 25);
    server.pass(61);
    server
        .client()
        .post(
            "/api/v1/alarms/line/conductivity-high/acknowledge",
            "{\"who\":\"Kim\",\"note\":\"reset\"}");
    server
        .client()
        .post("/api/v1/feeding", "{\"who\":\"Kim\",\"point\":\"line\",\"what\":\"plain-water\"}");
    JsonNode entries = journal("?point=line").get("entries");
    assertEquals("plain-water", entries.at("/0/feeding/what").asText());
    assertEquals("acknowledged", entries.at("/1/alarm/transition").asText());
    assertEquals("reset", entries.at("/1/alarm/note").asText());
    assertEquals("Kim", entries.at("/1/author").asText());
    assertEquals("raised", entries.at("/2/alarm/transition").asText());
    assertEquals(2, journal("?kind=alarm").get("entries").size());
  }

  @Test
  void showsAPhotoAsItWasSent() throws Exception {
    HttpResponse<String> answer = write(withPhoto("image/jpeg", JPEG));
    assertEquals(201, answer.statusCode(), answer::body);
    String photo = TestClient.JSON.readTree(answer.body()).get("photo").asText();
    HttpResponse<String> shown = server.client().get(photo);
    assertEquals("image/jpeg", shown.headers().firstValue("Content-Type").orElse(""));
    assertTrue(shown.body().endsWith("abc"));
    TestClient.problem(404, server.client().get("/api/v1/journal/1/photo"));
  }

  @Test
  void takesAPhotoOfAMillionOctetsAndNoMore() throws Exception {
    byte[] large = new byte[1_000_000];
    System.arraycopy(JPEG, 0, large, 0, JPEG.length);
    assertEquals(201, write(withPhoto("image/jpeg", large)).statusCode());
    long id = server.evidence().evidence(feedwitness.ledger.EvidenceQuery.newest(1)).get(0).id();
    assertArrayEquals(large, server.evidence().attachment(id).orElseThrow().octets().toArray());
    byte[] larger = java.util.Arrays.copyOf(large, 1_000_003);
    TestClient.problem(422, write(withPhoto("image/jpeg", larger)));
    TestClient.problem(413, write(withPhoto("image/jpeg", new byte[2_000_000])));
  }

  @Test
  void refusesAPhotoThatIsNoPicture() throws Exception {
    byte[] script = "<script>alert(1)</script>".getBytes(StandardCharsets.UTF_8);
    for (String type : new String[] {"image/jpeg", "image/png", "image/webp", "text/html"}) {
      TestClient.problem(422, write(withPhoto(type, script)));
    }
    TestClient.problem(422, write(withPhoto("image/svg+xml", script)));
    TestClient.problem(
        422,
        write(
            "{\"author\":\"Kim\",\"text\":\"x\",\"photo\":{\"media_type\":\"image/png\",\"base64\":\"%%\"}}"));
    TestClient.problem(422, write("{\"author\":\"Kim\",\"text\":\"x\",\"photo\":7}"));
  }

  @Test
  void refusesMalformedNotes() throws Exception {
    TestClient.problem(400, write("{\"author\":"));
    TestClient.problem(400, write("[]"));
    TestClient.problem(422, write("{\"author\":\"Kim\"}"));
    TestClient.problem(422, write("{\"author\":\"Kim\",\"text\":\" \"}"));
    TestClient.problem(422, write("{\"author\":\"Kim\",\"text\":\"x\",\"point\":\"../tank\"}"));
    TestClient.problem(422, write("{\"author\":\"Kim\",\"text\":\"a\\u0000b\"}"));
    TestClient.problem(422, write("{\"author\":\"Kim\",\"text\":\"" + "x".repeat(4001) + "\"}"));
    TestClient.problem(404, server.client().get("/api/v1/journal/..%2f..%2fetc%2fpasswd/photo"));
    TestClient.problem(404, server.client().get("/api/v1/journal/99999999999999999/photo"));
    for (String query :
        new String[] {"?limit=0", "?limit=201", "?before=x", "?kind=secret", "?x=1"}) {
      TestClient.problem(400, server.client().get("/api/v1/journal" + query));
    }
  }

  @Test
  void givesTenThousandNotesPageByPage() throws Exception {
    for (int i = 0; i < 10_000; i++) {
      server
          .alarms()
          .note(
              new feedwitness.engine.JournalNote(
                  "line",
                  i % 1000 == 0 ? "bench-3" : "",
                  "Kim",
                  "note " + i,
                  "",
                  java.util.Optional.empty()));
    }
    Set<String> seen = new HashSet<>();
    String query = "?kind=note&limit=200";
    JsonNode page = journal(query);
    while (true) {
      page.get("entries").forEach(entry -> seen.add(entry.get("text").asText()));
      if (page.get("next").isNull()) {
        break;
      }
      page = journal(query + "&before=" + page.get("next").asText());
    }
    assertEquals(10_000, seen.size());
    assertEquals(10, journal("?block=bench-3&limit=200").get("entries").size());
  }

  @Test
  void exportsATableThatASpreadsheetReads() throws Exception {
    write(
        "{\"author\":\"Kim\",\"block\":\"bench-3\",\"text\":\"=HYPERLINK(\\\"x\\\")\\nsecond, line\"}");
    HttpResponse<String> csv = server.client().get("/api/v1/journal/export");
    assertEquals("text/csv", csv.headers().firstValue("Content-Type").orElse(""));
    String[] parts = csv.body().split("\r\n", 2);
    assertEquals(
        "time,id,kind,point,block,author,what,priority,state,value,limit,unit,text,plants,photo",
        parts[0]);
    assertTrue(parts[1].contains(",\"'=HYPERLINK(\"\"x\"\")\nsecond, line\","), parts[1]);
    assertTrue(parts[1].startsWith("2026-06-01T09:00:00.000+01:00,3-"), parts[1]);
  }
}
