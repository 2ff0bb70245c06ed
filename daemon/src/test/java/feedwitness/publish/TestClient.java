package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/** Speaks HTTP to the real server, and looks at the headers of every answer it gets. */
final class TestClient {
  static final ObjectMapper JSON = new ObjectMapper();
  private static final Duration LONG = Duration.ofSeconds(20);

  private final HttpClient http = HttpClient.newHttpClient();
  private final String host;
  private final int port;

  TestClient(int port) {
    this("127.0.0.1", port);
  }

  TestClient(String host, int port) {
    this.host = host;
    this.port = port;
  }

  HttpResponse<String> get(String path, String... headers) throws Exception {
    return send("GET", path, HttpRequest.BodyPublishers.noBody(), headers);
  }

  HttpResponse<String> post(String path, String body, String... headers) throws Exception {
    String[] all = java.util.Arrays.copyOf(headers, headers.length + 2);
    all[headers.length] = "Content-Type";
    all[headers.length + 1] = "application/json";
    return send("POST", path, HttpRequest.BodyPublishers.ofString(body), all);
  }

  HttpResponse<String> send(
      String method, String path, HttpRequest.BodyPublisher body, String... headers)
      throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://" + host + ":" + port + path))
            .timeout(LONG)
            .method(method, body);
    if (headers.length > 0) {
      request.headers(headers);
    }
    HttpResponse<String> answer =
        http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    SafetyHeaders.ALL.forEach(
        (name, value) ->
            assertEquals(
                java.util.List.of(value),
                answer.headers().allValues(name),
                () -> name + " on " + method + " " + path + " " + answer.statusCode()));
    return answer;
  }

  static JsonNode json(HttpResponse<String> answer) throws IOException {
    return JSON.readTree(answer.body());
  }

  /** Asserts a problem of this status and returns it. */
  static JsonNode problem(int status, HttpResponse<String> answer) throws IOException {
    assertEquals(status, answer.statusCode(), answer::body);
    String type = answer.headers().firstValue("Content-Type").orElse("");
    assertEquals("application/problem+json", type);
    return problem(status, answer.body());
  }

  static JsonNode problem(int status, String body) throws IOException {
    JsonNode problem = JSON.readTree(body);
    assertEquals(status, problem.path("status").asInt());
    assertEquals("about:blank", problem.path("type").asText());
    assertTrue(problem.path("title").asText().length() > 3, body);
    assertTrue(problem.path("detail").asText().length() > 10, body);
    return problem;
  }

  /** Sends octets as they are and reads until the server closes. */
  String raw(String request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.setSoTimeout((int) LONG.toMillis());
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Asserts that a raw answer is a problem of this status with all safety headers. */
  static JsonNode rawProblem(int status, String answer) throws IOException {
    assertTrue(answer.startsWith("HTTP/1.1 " + status), answer);
    SafetyHeaders.ALL.forEach(
        (name, value) -> assertTrue(answer.contains(name + ": " + value + "\r\n"), answer));
    assertTrue(answer.contains("Content-Type: application/problem+json"), answer);
    return problem(status, answer.substring(answer.indexOf("\r\n\r\n") + 4));
  }
}
