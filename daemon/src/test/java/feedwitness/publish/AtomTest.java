package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.EvidenceQuery;
import java.io.ByteArrayInputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The feed of alarms, held against RFC 4287 and RFC 5005. */
class AtomTest {
  private static final String ATOM = "http://www.w3.org/2005/Atom";
  private static final String HISTORY = "http://purl.org/syndication/history/1.0";

  @RegisterExtension final RunningServer server = new RunningServer();

  private Document feed(String path) throws Exception {
    HttpResponse<String> answer = server.client().get(path);
    assertEquals(200, answer.statusCode(), answer::body);
    assertEquals("application/atom+xml", answer.headers().firstValue("Content-Type").orElse(""));
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    Document document =
        factory
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(answer.body().getBytes(StandardCharsets.UTF_8)));
    assertWellFormed(document.getDocumentElement());
    return document;
  }

  /** RFC 4287, 4.1.1 and 4.1.2: what a feed and an entry must have, once each. */
  private static void assertWellFormed(Element feed) {
    assertEquals(ATOM, feed.getNamespaceURI());
    assertEquals("feed", feed.getLocalName());
    for (String needed : List.of("id", "title", "updated")) {
      assertEquals(1, children(feed, needed).size(), needed);
    }
    assertEquals(1, children(feed, "author").size(), "or else each entry needs one");
    assertEquals(1, links(feed, "self").size());
    Set<String> ids = new HashSet<>();
    for (Element entry : children(feed, "entry")) {
      for (String needed : List.of("id", "title", "updated", "content")) {
        assertEquals(1, children(entry, needed).size(), needed);
      }
      assertTrue(ids.add(text(entry, "id")), "an id is there twice");
      assertTrue(text(entry, "id").matches("urn:uuid:[0-9a-f-]{36}"));
      assertNotNull(OffsetDateTime.parse(text(entry, "updated")));
    }
  }

  private static List<Element> children(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    NodeList all = parent.getElementsByTagNameNS(ATOM, name);
    for (int i = 0; i < all.getLength(); i++) {
      if (all.item(i).getParentNode() == parent && all.item(i) instanceof Element element) {
        found.add(element);
      }
    }
    return found;
  }

  private static String text(Element parent, String name) {
    return children(parent, name).get(0).getTextContent();
  }

  private static List<String> links(Element feed, String relation) {
    return children(feed, "link").stream()
        .filter(link -> link.getAttribute("rel").equals(relation))
        .map(link -> link.getAttribute("href"))
        .toList();
  }

  private void alarm(int times) {
    for (int i = 0; i < times; i++) {
      server.nursery().indicate(FixtureNursery.LINE, 2.86, 25);
      server.pass(61);
      server.nursery().indicate(FixtureNursery.LINE, 1.5, 25);
      server.pass(61);
    }
  }

  @Test
  void isAFeedEvenWhenNothingHappened() throws Exception {
    Element feed = feed("/alarms.atom").getDocumentElement();
    assertEquals("Alarms of Quarry End Nursery", text(feed, "title"));
    assertEquals(List.of(), children(feed, "entry"));
  }

  @Test
  void tellsNewestFirstWhatHappenedAndWhatToDo() throws Exception {
    alarm(1);
    Element feed = feed("/alarms.atom").getDocumentElement();
    List<Element> entries = children(feed, "entry");
    assertEquals("line: Strength too high, cleared", text(entries.get(0), "title"));
    assertEquals("line: Strength too high, raised", text(entries.get(1), "title"));
    assertTrue(text(entries.get(1), "content").contains("2.86 mS/cm is above"));
    assertTrue(text(entries.get(1), "content").contains("What to do: stop feeding"));
    assertEquals(text(entries.get(0), "updated"), text(feed, "updated"));
  }

  @Test
  void escapesWhatPeopleWrite() throws Exception {
    alarm(1);
    server
        .client()
        .post(
            "/api/v1/alarms/line/conductivity-high/acknowledge",
            "{\"who\":\"Kim <b>\",\"note\":\"a < b & c ]]> \\\"d\\\"\"}");
    Element entry = children(feed("/alarms.atom").getDocumentElement(), "entry").get(0);
    assertEquals("Kim <b>", children(entry, "author").get(0).getTextContent());
    assertTrue(text(entry, "content").startsWith("a < b & c ]]> \"d\"\n"));
  }

  @Test
  void leadsThroughItsArchivesToTheVeryFirstEntry() throws Exception {
    alarm(2);
    for (int i = 0; i < 1200; i++) {
      server
          .alarms()
          .note(
              new feedwitness.engine.JournalNote(
                  "", "", "Kim", "note", "", java.util.Optional.empty()));
    }
    alarm(1);
    Element current = feed("/alarms.atom").getDocumentElement();
    Map<String, String> known = entries(current);
    int archives = 0;
    @Nullable String next = previous(current);
    while (next != null) {
      Element archive = feed(next.replaceFirst("http://[^/]+", "")).getDocumentElement();
      assertEquals(1, archive.getElementsByTagNameNS(HISTORY, "archive").getLength());
      assertEquals(text(current, "id"), text(archive, "id"));
      assertEquals(links(current, "self"), links(archive, "current"));
      entries(archive)
          .forEach(
              (id, title) -> {
                String before = known.putIfAbsent(id, title);
                assertTrue(before == null || before.equals(title), "an id means one thing");
              });
      archives++;
      next = previous(archive);
    }
    assertEquals(2, archives);
    assertEquals(
        server.evidence().evidence(EvidenceQuery.newest(EvidenceQuery.MOST, "alarm")).size(),
        known.size());
    TestClient.problem(404, server.client().get("/alarms/archive/3.atom"));
    TestClient.problem(404, server.client().get("/alarms/archive/..%2f1.atom"));
  }

  private static Map<String, String> entries(Element feed) {
    Map<String, String> entries = new java.util.HashMap<>();
    children(feed, "entry").forEach(e -> entries.put(text(e, "id"), text(e, "title")));
    return entries;
  }

  private static @Nullable String previous(Element feed) {
    List<String> links = links(feed, "prev-archive");
    return links.isEmpty() ? null : links.get(0);
  }
}
