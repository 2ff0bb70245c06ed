package feedwitness.publish;

import feedwitness.engine.DataDesk;
import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Takes batches into memory and backs up four letters; refuses what the engine would refuse. */
final class FixtureData implements DataDesk {
  private final FixtureNursery nursery;
  private final List<ImportBatch> batches = new ArrayList<>();

  FixtureData(FixtureNursery nursery) {
    this.nursery = nursery;
  }

  List<ImportBatch> batches() {
    return batches;
  }

  @Override
  public ImportOutcome take(ImportBatch batch) {
    if (batch.rows().get(0).millis() > nursery.now().toEpochMilli()) {
      return new ImportOutcome.Refused("rows", "time is in the future; check the clock");
    }
    batches.add(batch);
    return new ImportOutcome.Taken(batch.rows().size(), 0, 0, 3, 77);
  }

  @Override
  public Path backup() throws IOException {
    return Files.writeString(Files.createTempFile("quarry-end", ".part"), "feed");
  }

  @Override
  public List<PointName> points() {
    return nursery.site().points().stream().map(point -> point.name()).toList();
  }
}
