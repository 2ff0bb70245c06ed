package feedwitness.app;

import feedwitness.app.table.Stretch;
import feedwitness.app.table.TableRow;
import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import feedwitness.quantity.ConductivityUnit;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Hands the readings of a table over in its order, some at a time. */
final class ImportSender implements ImportWalk.Visitor {
  private final ImportPlan plan;
  private final boolean allowFuture;
  private final ImportTarget target;
  private final ProgressBar progress;
  private final List<ImportBatch.Row> rows = new ArrayList<>();
  private @Nullable ConductivityUnit unit;
  private long taken;
  private long known;
  private long retired;
  private int boot;
  private long sequence;

  ImportSender(ImportPlan plan, boolean allowFuture, ImportTarget target, ProgressBar progress) {
    this.plan = plan;
    this.allowFuture = allowFuture;
    this.target = target;
    this.progress = progress;
  }

  long taken() {
    return taken;
  }

  long known() {
    return known;
  }

  long retired() {
    return retired;
  }

  /** Sends what is left and waits until all is on disk. */
  void finish() throws IOException {
    send();
    if (taken > 0) {
      target.awaitDurable(boot, sequence);
    }
  }

  @Override
  public void reading(Stretch stretch, TableRow.Reading row, Instant time) throws IOException {
    if (rows.size() == ImportBatch.MOST_ROWS || (unit != null && unit != row.unit())) {
      send();
    }
    unit = row.unit();
    rows.add(new ImportBatch.Row(time.toEpochMilli(), row.conductivity(), row.temperature()));
  }

  private void send() throws IOException {
    if (rows.isEmpty() || unit == null) {
      return;
    }
    ImportOutcome outcome =
        target.take(
            new ImportBatch(
                plan.point(),
                unit,
                plan.columns().temperatureUnit(),
                plan.compensated(),
                allowFuture,
                rows));
    if (outcome instanceof ImportOutcome.Refused refused) {
      throw new IOException(refused.message());
    }
    ImportOutcome.Taken done = (ImportOutcome.Taken) outcome;
    taken += done.taken();
    known += done.known();
    retired += done.retired();
    if (done.taken() > 0) {
      boot = done.boot();
      sequence = done.sequence();
    }
    rows.clear();
  }

  @Override
  public void undated(Stretch stretch, TableRow.Reading row) {
    // told before
  }

  @Override
  public void broken(long line, TableRow.Broken row) {
    // told before
  }

  @Override
  public void other(TableRow row) {
    // told before
  }

  @Override
  public void line(long line, String text) {
    progress.at(line);
  }
}
