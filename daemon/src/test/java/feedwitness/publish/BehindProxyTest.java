package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A reverse proxy on the same machine ends TLS and hands requests on from 127.0.0.1. */
class BehindProxyTest {
  private static final String CODE = "{\"role\":\"see\"}";

  @RegisterExtension final OpenServer server = new OpenServer(true);

  private String code() throws Exception {
    HttpResponse<String> answer =
        server
            .desk()
            .post("/api/v1/access/codes", CODE, "Authorization", server.key().authorization());
    JsonNode offer = TestClient.json(answer);
    assertEquals("https://feed.quarry-end.example/", offer.get("address").asText());
    return offer.get("code").asText();
  }

  @Test
  void takesNobodyForTheDeskButKnowsTheKey() throws Exception {
    TestClient.problem(401, server.desk().get("/api/v1/points"));
    TestClient.problem(401, server.desk().post("/api/v1/access/codes", CODE));
    code();
  }

  @Test
  void givesItsTokenToTlsOnly() throws Exception {
    HttpResponse<String> paired = OpenServer.pair(server.desk(), code(), "Barrel phone");
    String cookie = paired.headers().firstValue("Set-Cookie").orElseThrow();
    assertTrue(cookie.startsWith("__Host-feedwitness-device="), cookie);
    assertTrue(cookie.endsWith("; HttpOnly; SameSite=Strict; Secure"), cookie);
    String own = OpenServer.cookie(paired);
    assertEquals(200, server.desk().get("/api/v1/points", "Cookie", own).statusCode());
  }

  @Test
  void countsGuessesByTheAddressTheProxyNamesLast() throws Exception {
    String wrong = "00000000";
    String code = code();
    for (int i = 0; i < 5; i++) {
      String lie = "198.51.100.%d, 192.0.2.7".formatted(i);
      TestClient.problem(422, guess(wrong.equals(code) ? "00000001" : wrong, lie));
    }
    TestClient.problem(429, guess(code, "198.51.100.9, 192.0.2.7"));
    assertEquals(201, guess(code, "192.0.2.8").statusCode());
  }

  @Test
  void looksUpNoNameThatAProxyPassesOn() throws Exception {
    TestClient.problem(422, guess("12345678", "lookup.rebound.example"));
  }

  private HttpResponse<String> guess(String code, String forwardedFor) throws Exception {
    return server
        .desk()
        .post(
            "/api/v1/access/pair",
            "{\"code\":\"%s\",\"name\":\"Phone\"}".formatted(code),
            "X-Forwarded-For",
            forwardedFor);
  }

  @Test
  void answersThePagesOfTheProxyOnly() throws Exception {
    String body = "{\"code\":\"12345678\",\"name\":\"Phone\"}";
    String origin = server.desk().raw(request(body, "https://feed.quarry-end.example"));
    assertTrue(origin.startsWith("HTTP/1.1 422"), origin);
    TestClient.rawProblem(403, server.desk().raw(request(body, "http://feed.quarry-end.example")));
    TestClient.rawProblem(403, server.desk().raw(request(body, "https://other.example")));
  }

  private static String request(String body, String origin) {
    return String.join(
        "\r\n",
        "POST /api/v1/access/pair HTTP/1.1",
        "Host: feed.quarry-end.example",
        "Origin: " + origin,
        "Content-Type: application/json",
        "Content-Length: " + body.length(),
        "Connection: close",
        "",
        body);
  }
}
