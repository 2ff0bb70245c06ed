package feedwitness.app;

import feedwitness.engine.DataDesk;
import feedwitness.engine.Engine;
import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import feedwitness.engine.Importer;
import feedwitness.quantity.PointName;
import feedwitness.settings.ConfigFiles;
import feedwitness.site.MeasuringPoint;
import feedwitness.store.H2Ledger;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.tinylog.Logger;

/** Imports and backups of a running service. */
final class ServiceData implements DataDesk {
  private static final String BEING_SENT = "backup-being-sent-";
  private static final String PART = ".part";

  private final Importer importer;
  private final Engine engine;
  private final H2Ledger ledger;
  private final Path directory;
  private final ConfigFiles files;

  ServiceData(
      Importer importer, Engine engine, H2Ledger ledger, Path directory, ConfigFiles files) {
    this.files = files;
    this.importer = importer;
    this.engine = engine;
    this.ledger = ledger;
    this.directory = directory;
    removeLeftovers();
  }

  /** Of a service that was killed while it sent a backup. */
  private void removeLeftovers() {
    try (DirectoryStream<Path> left =
        Files.newDirectoryStream(directory, BEING_SENT + "*" + PART)) {
      for (Path path : left) {
        Files.deleteIfExists(path);
      }
    } catch (IOException e) {
      Logger.warn("backups that were not sent to their end stay in {}: {}", directory, e);
    }
  }

  @Override
  public ImportOutcome take(ImportBatch batch) {
    return importer.take(batch);
  }

  @Override
  public Path backup() throws IOException {
    Path target = Files.createTempFile(directory, BEING_SENT, PART);
    try {
      ledger.backup(target, BackedUpConfiguration.of(files));
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(target);
      throw e;
    }
    return target;
  }

  @Override
  public List<PointName> points() {
    return Stream.concat(
            engine.site().points().stream().map(MeasuringPoint::name), ledger.recorded().stream())
        .distinct()
        .toList();
  }
}
