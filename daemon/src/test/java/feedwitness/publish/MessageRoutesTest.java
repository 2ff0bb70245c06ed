package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class MessageRoutesTest {
  @RegisterExtension final RunningServer server = new RunningServer();

  @Test
  void showsHowEachChannelStands() throws Exception {
    JsonNode state = TestClient.json(server.client().get("/api/v1/messages"));
    assertEquals("mail", state.at("/channels/0/name").asText());
    assertEquals("2026-06-01T21:04:00.000Z", state.at("/channels/0/next_attempt").asText());
    assertEquals("it fell silent", state.at("/channels/0/last/said").asText());
    assertTrue(state.at("/channels/1/last").isNull());
    assertEquals("2026-06-02T05:00:00.000Z", state.get("quiet_until").asText());
  }

  @Test
  void sendsATestMessageOnceAtATime() throws Exception {
    HttpResponse<String> first = server.client().post("/api/v1/messages/test", "{}");
    assertEquals(202, first.statusCode(), first::body);
    assertEquals("desk", TestClient.json(first).at("/channels/1").asText());
    TestClient.problem(409, server.client().post("/api/v1/messages/test", "{}"));
  }

  @Test
  void takesNoRecipientsFromTheNetwork() throws Exception {
    TestClient.problem(
        422, server.client().post("/api/v1/messages/test", "{\"to\":\"a@b.example\"}"));
  }
}
