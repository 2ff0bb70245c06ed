package feedwitness.engine;

import feedwitness.quantity.PointName;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Readings from elsewhere in, whole backups out, while the service runs. May block for seconds. */
public interface DataDesk {

  /**
   * Takes readings that were recorded elsewhere, in the order they are given; those already in the
   * history (same point, time and numbers) are left out and counted.
   */
  ImportOutcome take(ImportBatch batch);

  /**
   * Writes a backup of everything up to now into the data directory. The caller removes it.
   *
   * @throws IOException in words for people
   */
  Path backup() throws IOException;

  /** Points of which anything is kept or that are configured, by name. */
  List<PointName> points();
}
