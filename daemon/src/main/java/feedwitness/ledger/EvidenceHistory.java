package feedwitness.ledger;

import java.util.List;
import java.util.Optional;

/** Reads what was put on record. Safe to call from many threads. */
public interface EvidenceHistory {

  /** The records asked for, in the order asked for. Only what is on disk. */
  List<Evidence> evidence(EvidenceQuery query);

  /** One record. */
  Optional<Evidence> evidence(long id);

  /** The picture of a record. */
  Optional<Attachment> attachment(long id);

  /** What was last kept under a name by {@link EvidenceLedger#keepState}. */
  Optional<String> state(String name);
}
