package feedwitness.ledger;

import feedwitness.quantity.Stamp;
import java.util.SortedMap;

/**
 * Something that was put on record and is never changed: corrections are records of their own that
 * point at this one. See {@link EvidenceDraft} for the parts.
 *
 * @param id counts records from 1 in their order
 * @param at when; its sequence is that of the last sample before
 * @param hasAttachment whether {@link EvidenceHistory#attachment} has something
 */
public record Evidence(
    long id,
    Stamp at,
    String kind,
    String subject,
    String author,
    SortedMap<String, String> fields,
    boolean hasAttachment) {
  public Evidence {
    fields = java.util.Collections.unmodifiableSortedMap(fields);
  }

  /** A field; empty text if there is none of the name. */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }

  /** {@code boot-id}: never given twice, not even after a power cut took a record unread. */
  public String key() {
    return at.boot() + "-" + id;
  }
}
