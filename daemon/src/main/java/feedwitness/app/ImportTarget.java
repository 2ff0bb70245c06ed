package feedwitness.app;

import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import java.io.IOException;

/** Where imported readings go: a running service, or the file of one that is stopped. */
interface ImportTarget extends AutoCloseable {
  /** Hands rows over; failures in words for people. */
  ImportOutcome take(ImportBatch batch) throws IOException;

  /** Returns when everything up to a stamp is safe on disk. */
  void awaitDurable(int boot, long sequence) throws IOException;

  @Override
  void close();
}
