package feedwitness.store;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongConsumer;

/** What a history answers, whether it is being written or only read. */
abstract class RecordedHistory implements History, EvidenceHistory {
  private final HistoryReader reader;
  private final EvidenceReader records;

  RecordedHistory(HistoryReader reader, EvidenceReader records) {
    this.reader = reader;
    this.records = records;
  }

  @Override
  public List<PointName> recorded() {
    return reader.recorded();
  }

  @Override
  public Optional<Measurement> latest(PointName point) {
    return reader.latest(point);
  }

  @Override
  public Optional<Measurement> latestReading(PointName point) {
    return reader.latestReading(point);
  }

  @Override
  public Course course(PointName point, Instant from, Instant to, int maxBuckets) {
    return reader.course(point, from, to, maxBuckets);
  }

  @Override
  public void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each) {
    reader.scan(point, from, to, each);
  }

  @Override
  public void retired(PointName point, Instant from, Instant to, LongConsumer minute) {
    reader.retired(point, from, to, minute);
  }

  @Override
  public Optional<Instant> newest() {
    return reader.newest();
  }

  @Override
  public List<Evidence> evidence(EvidenceQuery query) {
    return records.evidence(query);
  }

  @Override
  public Optional<Evidence> evidence(long id) {
    return records.evidence(id);
  }

  @Override
  public Optional<Attachment> attachment(long id) {
    return records.attachment(id);
  }

  @Override
  public Optional<String> state(String name) {
    return records.state(name);
  }
}
