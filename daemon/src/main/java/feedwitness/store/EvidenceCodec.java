package feedwitness.store;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A record as octets in an envelope of its own, so that it can be salvaged; its picture in another,
 * so that a page of records is small.
 */
final class EvidenceCodec {
  private static final int MOST_FIELDS = EvidenceDraft.LIMIT_CHARACTERS;

  private EvidenceCodec() {}

  static byte[] pack(Evidence evidence) {
    Stamp at = evidence.at();
    ByteSink sink = new ByteSink();
    sink.unsigned(evidence.id());
    sink.unsigned(at.boot());
    sink.unsigned(at.sequence());
    sink.signed(at.monotonicNanos());
    sink.signed(at.wallMillis());
    sink.octet(at.dated() ? 1 : 0);
    sink.text(evidence.kind());
    sink.text(evidence.subject());
    sink.text(evidence.author());
    sink.unsigned(evidence.fields().size());
    evidence
        .fields()
        .forEach(
            (name, text) -> {
              sink.text(name);
              sink.text(text);
            });
    sink.octet(evidence.hasAttachment() ? 1 : 0);
    return Envelope.pack(Envelope.Kind.EVIDENCE, sink.toArray());
  }

  static Evidence unpack(byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    long id = source.unsigned();
    Stamp at =
        new Stamp(
            source.count(Integer.MAX_VALUE),
            source.unsigned(),
            source.signed(),
            source.signed(),
            source.octet() == 1);
    String kind = source.text();
    String subject = source.text();
    String author = source.text();
    SortedMap<String, String> fields = new TreeMap<>();
    for (int left = source.count(MOST_FIELDS); left > 0; left--) {
      fields.put(source.text(), source.text());
    }
    return new Evidence(id, at, kind, subject, author, fields, source.octet() == 1);
  }

  /** A picture and whose it is. */
  record Picture(long id, Attachment attachment) {}

  static byte[] pack(Picture picture) {
    ByteSink sink = new ByteSink();
    sink.unsigned(picture.id());
    sink.text(picture.attachment().mediaType());
    sink.unsigned(picture.attachment().octets().length());
    sink.octets(picture.attachment().octets().toArray());
    return Envelope.pack(Envelope.Kind.PICTURE, sink.toArray());
  }

  static Picture unpackPicture(byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    long id = source.unsigned();
    String mediaType = source.text();
    Octets octets = Octets.of(source.octets(source.count(Attachment.LIMIT_OCTETS)));
    return new Picture(id, new Attachment(mediaType, octets));
  }

  static Evidence of(long id, Stamp at, EvidenceDraft draft) {
    return new Evidence(
        id,
        at,
        draft.kind(),
        draft.subject(),
        draft.author(),
        draft.fields(),
        draft.attachment().isPresent());
  }
}
