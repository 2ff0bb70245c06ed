package feedwitness.app;

import feedwitness.engine.Engine;
import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import feedwitness.engine.Importer;
import feedwitness.engine.Intake;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.Config;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import java.io.IOException;
import java.time.Duration;

/** The file of a service that is stopped: the same engine and ledger, without probes and page. */
final class StoppedTarget implements ImportTarget {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final H2Ledger ledger;
  private final Engine engine;
  private final Importer importer;

  private StoppedTarget(H2Ledger ledger, Engine engine, Importer importer) {
    this.ledger = ledger;
    this.engine = engine;
    this.importer = importer;
  }

  /** Opens the file; counted as a start of the service. */
  static StoppedTarget open(Config config) throws IOException {
    TimeSource clock = TimeSource.system();
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                config.storeDirectory(), config.syncEvery(), StoreSettings.DEFAULT_QUEUE),
            clock);
    if (opening instanceof LedgerOpening.Refused refused) {
      throw new IOException(refused.message());
    }
    H2Ledger ledger = ((LedgerOpening.Opened) opening).ledger();
    Intake intake = new Intake(ledger.boot(), clock);
    Engine engine =
        new Engine(ledger.boot(), Version.text(), config.site(), intake, ledger, ledger, clock);
    engine.start();
    return new StoppedTarget(
        ledger, engine, new Importer(intake, engine, ledger, clock, ledger::halted));
  }

  @Override
  public ImportOutcome take(ImportBatch batch) {
    return importer.take(batch);
  }

  @Override
  public void awaitDurable(int boot, long sequence) throws IOException {
    if (!ledger.sync(PATIENCE)) {
      throw new IOException(
          ledger.trouble().orElse("the readings were not written within " + PATIENCE));
    }
  }

  @Override
  public void close() {
    engine.close();
    ledger.close();
  }
}
