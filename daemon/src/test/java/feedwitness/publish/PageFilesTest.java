package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PageFilesTest {
  @RegisterExtension final RunningServer server = new RunningServer();

  @ParameterizedTest
  @CsvSource({
    "/, text/html",
    "/index.html, text/html",
    "/vendor/uPlot.esm.js, text/javascript",
    "/vendor/uPlot.min.css, text/css",
    "/assets/fixture/leaf.svg, image/svg+xml",
    "/assets/fixture/dot.png, image/png",
    "/assets/fixture/page.webmanifest, application/manifest+json",
  })
  void servesThePagesFilesWithTheirType(String path, String type) throws Exception {
    HttpResponse<String> file = server.client().get(path);
    assertEquals(200, file.statusCode());
    String sent = file.headers().firstValue("Content-Type").orElse("");
    assertTrue(sent.startsWith(type), sent);
    assertEquals("no-cache", file.headers().firstValue("Cache-Control").orElse(""));
    assertFalse(file.body().isEmpty());
    assertEquals(type.startsWith("text/"), sent.contains("charset"), sent);
  }

  @Test
  void sendsAFileAgainOnlyIfItChanged() throws Exception {
    HttpResponse<String> first = server.client().get("/vendor/uPlot.esm.js");
    String tag = first.headers().firstValue("ETag").orElseThrow();
    for (String known : new String[] {tag, "W/" + tag, "\"other\", " + tag, "*"}) {
      HttpResponse<String> again =
          server.client().get("/vendor/uPlot.esm.js", "If-None-Match", known);
      assertEquals(304, again.statusCode());
      assertEquals("", again.body());
      assertEquals(tag, again.headers().firstValue("ETag").orElseThrow());
    }
    assertEquals(
        200,
        server.client().get("/vendor/uPlot.esm.js", "If-None-Match", "\"other\"").statusCode());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../publish/openapi.json",
        "/assets/../../publish/openapi.json",
        "/assets/..%2f..%2fpublish/openapi.json",
        "/%2e%2e/publish/openapi.json",
        "/assets//../index.html",
        "/..\\..\\publish\\openapi.json",
        "/feedwitness/publish/WebServer.class",
        "/tinylog.properties",
        "/assets",
        "/assets/",
        "/.index.html",
        "/index.html/",
        "/index.html%00.js",
        "/INDEX.HTML",
        "//etc/passwd",
        "/vendor/../vendor/uPlot.cjs.js"
      })
  void servesNothingBesides(String path) throws Exception {
    String answer =
        server
            .client()
            .raw("GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
    int status = Integer.parseInt(answer.substring(9, 12));
    assertTrue(status == 404 || status == 400, answer);
    TestClient.rawProblem(status, answer);
  }
}
