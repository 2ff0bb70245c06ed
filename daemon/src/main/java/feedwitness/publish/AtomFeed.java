package feedwitness.publish;

import feedwitness.ledger.Evidence;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Writes feed documents.
 *
 * @param identity of this installation; all ids come from it
 * @param title of the nursery
 * @param base scheme and host of all links
 * @param empty when a feed without entries was updated
 */
record AtomFeed(UUID identity, String title, String base, Instant empty) {
  private static final String ATOM = "http://www.w3.org/2005/Atom";
  private static final String HISTORY = "http://purl.org/syndication/history/1.0";

  /**
   * Which document.
   *
   * @param path its own
   * @param archive whether it never changes any more
   * @param previous path of the archive before it
   */
  record Place(String path, boolean archive, Optional<String> previous) {}

  /** Entries, newest first. */
  byte[] write(Place place, List<Evidence> entries) {
    ByteArrayOutputStream octets = new ByteArrayOutputStream();
    try {
      XMLStreamWriter out =
          XMLOutputFactory.newFactory()
              .createXMLStreamWriter(octets, StandardCharsets.UTF_8.name());
      out.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
      out.writeStartElement("feed");
      out.writeDefaultNamespace(ATOM);
      out.writeNamespace("fh", HISTORY);
      head(out, place, entries);
      for (Evidence record : entries) {
        entry(out, record);
      }
      out.writeEndDocument();
      out.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("a feed cannot be written into memory", e);
    }
    return octets.toByteArray();
  }

  private void head(XMLStreamWriter out, Place place, List<Evidence> entries)
      throws XMLStreamException {
    text(out, "id", "urn:uuid:" + identity);
    text(out, "title", "Alarms of " + title);
    Instant newest =
        entries.stream().map(record -> record.at().wall()).max(Instant::compareTo).orElse(empty);
    text(out, "updated", Numbers.time(newest));
    out.writeStartElement("author");
    text(out, "name", "Feedwitness");
    out.writeEndElement();
    link(out, "self", place.path());
    if (place.archive()) {
      out.writeEmptyElement(HISTORY, "archive");
      link(out, "current", AtomRoutes.PATH);
    }
    if (place.previous().isPresent()) {
      link(out, "prev-archive", place.previous().get());
    }
  }

  private void link(XMLStreamWriter out, String relation, String path) throws XMLStreamException {
    out.writeEmptyElement("link");
    out.writeAttribute("rel", relation);
    out.writeAttribute("type", "application/atom+xml");
    out.writeAttribute("href", base + path);
  }

  private void entry(XMLStreamWriter out, Evidence record) throws XMLStreamException {
    JournalJson.AlarmPart alarm = JournalJson.alarm(record);
    out.writeStartElement("entry");
    text(out, "id", "urn:uuid:" + id(record));
    text(out, "title", "%s: %s, %s".formatted(record.subject(), alarm.title(), alarm.transition()));
    text(out, "updated", Numbers.time(record.at().wall()));
    if (!record.author().isEmpty()) {
      out.writeStartElement("author");
      text(out, "name", record.author());
      out.writeEndElement();
    }
    category(out, "priority", alarm.priority());
    category(out, "transition", alarm.transition());
    category(out, "kind", record.field("kind"));
    out.writeStartElement("content");
    out.writeAttribute("type", "text");
    out.writeCharacters(content(record, alarm));
    out.writeEndElement();
    out.writeEndElement();
  }

  /** From what is never given twice, here and elsewhere. */
  private UUID id(Evidence record) {
    return UUID.nameUUIDFromBytes((identity + "/" + record.key()).getBytes(StandardCharsets.UTF_8));
  }

  private static String content(Evidence record, JournalJson.AlarmPart alarm) {
    String said = alarm.note().isEmpty() ? "" : alarm.note() + "\n";
    String about =
        "If nobody acts: %s.\nWhat to do: %s."
            .formatted(record.field("consequence"), record.field("remedy"));
    return said + alarm.words() + "\n" + about;
  }

  private static void category(XMLStreamWriter out, String label, String term)
      throws XMLStreamException {
    out.writeEmptyElement("category");
    out.writeAttribute("term", term);
    out.writeAttribute("label", label + ": " + term);
  }

  private static void text(XMLStreamWriter out, String name, String text)
      throws XMLStreamException {
    out.writeStartElement(name);
    out.writeCharacters(text);
    out.writeEndElement();
  }
}
