package feedwitness.publish.access;

import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.tinylog.Logger;

/**
 * Keeps the page's certificate fresh: looks at its files now and then and takes a renewed one into
 * use without a restart. One that is not good is refused and the old one stays. One thread of its
 * own.
 */
public final class TlsKeeper implements AutoCloseable {
  private static final Duration WARN_BEFORE = Duration.ofDays(14);
  private static final long EVERY_MILLIS = 60_000;

  private final CertificateFiles files;
  private final List<String> names;
  private final TimeSource clock;
  private final BooleanSupplier clockTrusted;
  private final SslContextFactory.Server factory = new SslContextFactory.Server();
  private final Thread thread = new Thread(this::watch, "web-certificate");
  private volatile KeyedCertificate inUse;
  private volatile String refusal = "";
  private FileTimes seen;

  private record FileTimes(Optional<FileTime> chain, Optional<FileTime> key) {
    static FileTimes of(CertificateFiles files) {
      return new FileTimes(time(files.chain()), time(files.key()));
    }

    private static Optional<FileTime> time(Path file) {
      try {
        return Optional.of(Files.getLastModifiedTime(file));
      } catch (IOException e) {
        return Optional.empty();
      }
    }
  }

  /** What came of the first look. */
  public sealed interface Opening {
    record Opened(TlsKeeper keeper) implements Opening {}

    /** File, value and remedy. */
    record Refused(String message) implements Opening {}
  }

  private TlsKeeper(
      CertificateFiles files,
      List<String> names,
      TimeSource clock,
      BooleanSupplier clockTrusted,
      KeyedCertificate first) {
    this.files = files;
    this.names = List.copyOf(names);
    this.clock = clock;
    this.clockTrusted = clockTrusted;
    this.inUse = first;
    this.seen = FileTimes.of(files);
    use(first, factory);
    factory.setSniRequired(false);
    thread.setDaemon(true);
  }

  /**
   * Looks at the files.
   *
   * @param clockTrusted whether dates can be judged
   */
  public static Opening open(
      CertificateFiles files, List<String> names, TimeSource clock, BooleanSupplier clockTrusted) {
    CertificateFiles.Outcome outcome = files.read(now(clock, clockTrusted), names);
    return outcome instanceof CertificateFiles.Outcome.Good good
        ? new Opening.Opened(new TlsKeeper(files, names, clock, clockTrusted, good.certificate()))
        : new Opening.Refused(((CertificateFiles.Outcome.Refused) outcome).message());
  }

  /** For the connector; it starts and stops it. */
  public SslContextFactory.Server factory() {
    return factory;
  }

  /** Begins to look at the files each minute. */
  public void start() {
    thread.start();
  }

  private void watch() {
    try {
      while (!Thread.currentThread().isInterrupted()) {
        Thread.sleep(EVERY_MILLIS);
        look();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Takes renewed files into use if they are good. Called by one thread. */
  synchronized void look() {
    FileTimes times = FileTimes.of(files);
    if (times.equals(seen)) {
      return;
    }
    seen = times;
    CertificateFiles.Outcome outcome = files.read(now(clock, clockTrusted), names);
    if (outcome instanceof CertificateFiles.Outcome.Refused refused) {
      refusal = refused.message() + "; the one before stays in use";
      Logger.warn(refusal);
      return;
    }
    KeyedCertificate renewed = ((CertificateFiles.Outcome.Good) outcome).certificate();
    try {
      factory.reload(server -> use(renewed, (SslContextFactory.Server) server));
      inUse = renewed;
      refusal = "";
      Logger.info("the page has a renewed certificate, good until {}", renewed.end());
    } catch (Exception e) {
      refusal = "certificate: %s cannot be used (%s)".formatted(files.chain(), e.getMessage());
      Logger.warn(e, refusal);
    }
  }

  private static void use(KeyedCertificate certificate, SslContextFactory.Server factory) {
    String password = new Secrets().token();
    factory.setKeyStore(certificate.keyStore(password.toCharArray()));
    factory.setKeyStorePassword(password);
    factory.setKeyManagerPassword(password);
  }

  /** What is wrong with the certificate, in words; empty if nothing. */
  public List<String> trouble() {
    if (!refusal.isEmpty()) {
      return List.of(refusal);
    }
    Optional<Instant> now = now(clock, clockTrusted);
    Instant end = inUse.end();
    return now.isPresent() && now.get().plus(WARN_BEFORE).isAfter(end)
        ? List.of(
            "certificate: %s %s at %s; renew it, it is taken into use without a restart"
                .formatted(
                    files.chain(),
                    now.get().isAfter(end) ? "ended" : "ends",
                    end.truncatedTo(ChronoUnit.SECONDS)))
        : List.of();
  }

  private static Optional<Instant> now(TimeSource clock, BooleanSupplier trusted) {
    return trusted.getAsBoolean() ? Optional.of(clock.wall()) : Optional.empty();
  }

  @Override
  public void close() {
    thread.interrupt();
  }
}
