package feedwitness.store;

import feedwitness.ledger.DurableMark;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.MeasurementLedger;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.LongSupplier;
import org.tinylog.Logger;

/**
 * Measurements in an H2 file. {@link #append} is for the engine's thread, {@link #close} for the
 * thread that opened; everything else for any thread, but none that may be interrupted: an
 * interrupt inside H2 closes the database.
 */
public final class H2Ledger extends RecordedHistory
    implements MeasurementLedger, EvidenceLedger, AutoCloseable {
  private static final Duration SYNC_PATIENCE = Duration.ofSeconds(60);

  private final int boot;
  private final FileClaim claim;
  private final Dating dating;
  private final Pending pending;
  private final Writer writer;
  private final HistoryReader reader;
  private final Findings findings;
  private final EvidenceQueue evidence;
  private final Thread thread;

  H2Ledger(
      int boot,
      FileClaim claim,
      Dating dating,
      Pending pending,
      Writer writer,
      HistoryReader reader,
      Findings findings,
      EvidenceQueue evidence,
      EvidenceReader records) {
    super(reader, records);
    this.claim = claim;
    this.boot = boot;
    this.dating = dating;
    this.pending = pending;
    this.writer = writer;
    this.reader = reader;
    this.findings = findings;
    this.evidence = evidence;
    this.thread = new Thread(writer, "history-writer");
    thread.start();
  }

  /**
   * Opens the history file in a directory, makes it if there is none, brings an older layout
   * forward, seals what an earlier start left, and counts this start.
   */
  public static LedgerOpening open(StoreSettings settings, TimeSource time) {
    return open(settings, time, () -> Long.MAX_VALUE);
  }

  /**
   * The same, with an eye on the disk.
   *
   * @param freeOctets what the disk of the data directory has free, asked before every write; below
   *     the floor of the settings nothing is recorded
   */
  public static LedgerOpening open(
      StoreSettings settings, TimeSource time, LongSupplier freeOctets) {
    H2File file = new H2File(settings.directory());
    Migrator migrator = new Migrator(Migration.all());
    return new LedgerOpener(settings, time, migrator, file, freeOctets).open();
  }

  /** Number of this start of the service, counted in the file from 1; goes into every stamp. */
  public int boot() {
    return boot;
  }

  @Override
  public void append(Measurement measurement) {
    if (!Imports.isImported(measurement.sample())) {
      // an imported reading has the time of its file, which says nothing of our clock
      dating.note(measurement.stamp());
    }
    pending.add(measurement);
    reader.noteLatest(measurement);
  }

  /**
   * Forces what was appended so far to disk now.
   *
   * @return whether that was done within {@code longest}
   */
  public boolean sync(Duration longest) {
    return pending.sync(longest);
  }

  /** Tells commands that find the file in use where its holder answers. */
  public void announce(String url) {
    try {
      claim.announce(url);
    } catch (IOException e) {
      Logger.warn(e, "commands will have to be told --url {}", url);
    }
  }

  /**
   * Writes a backup of all that was appended until now, while recording goes on.
   *
   * @param target a new file in an existing directory
   * @param configuration files that are put in as well, by the name they get
   * @throws IOException in words for people, with nothing left of the target
   */
  public void backup(Path target, Map<String, Path> configuration) throws IOException {
    if (!sync(SYNC_PATIENCE)) {
      throw new IOException(
          trouble()
              .orElse("the history was not written to disk within %s".formatted(SYNC_PATIENCE)));
    }
    BackupWriter.write(reader.file(), target, configuration);
  }

  @Override
  public DurableMark durableThrough() {
    return writer.mark();
  }

  /** What keeps samples from being written at the moment, in words; empty when all is well. */
  public Optional<String> halted() {
    return writer.trouble();
  }

  @Override
  public Optional<String> trouble() {
    return writer.trouble().or(findings::first);
  }

  @Override
  public CompletableFuture<Evidence> append(Stamp at, EvidenceDraft draft) {
    return evidence.add(at, draft);
  }

  @Override
  public void keepState(String name, String text) {
    evidence.keep(name, text);
  }

  /** Writes everything that was appended, forces it to disk and closes the file. */
  @Override
  public void close() {
    pending.close();
    boolean interrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        // the writer must finish; the caller learns of the interrupt afterwards
        interrupted = true;
      }
    }
    if (writer.closedInOrder()) {
      claim.closedInOrder();
    }
    claim.close();
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
