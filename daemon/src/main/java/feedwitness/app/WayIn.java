package feedwitness.app;

import feedwitness.ledger.EvidenceHistory;
import feedwitness.publish.access.Access;
import feedwitness.publish.access.AccessKey;
import feedwitness.publish.access.AccessSettings;
import feedwitness.publish.access.AuditTrail;
import feedwitness.publish.access.CertificateFiles;
import feedwitness.publish.access.Devices;
import feedwitness.publish.access.RecordBook;
import feedwitness.publish.access.TlsKeeper;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.Config;
import feedwitness.settings.WebSettings;
import java.net.InetAddress;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * What the configuration says about who reaches the page, with its files read.
 *
 * @param trouble why it is less than the configuration asks for; empty if it is not
 */
record WayIn(AccessSettings settings, Optional<TlsKeeper> tls, List<String> trouble) {
  WayIn {
    trouble = List.copyOf(trouble);
  }

  /** What reading its files gave. */
  sealed interface Outcome {
    record Ready(WayIn way) implements Outcome {}

    /** Nothing may be served. */
    record Refused(String message) implements Outcome {}
  }

  /**
   * Reads the files. A missing or open key refuses the start, because somebody has just asked for
   * what is not safe. A certificate that cannot be used refuses only the page to other machines: it
   * ends by itself, maybe at a restart at night, and readings must go on.
   *
   * @param clockTrusted whether the dates of a certificate can be judged
   */
  static Outcome of(Config config, BooleanSupplier clockTrusted) {
    WebSettings web = config.web();
    Optional<AccessKey> key = Optional.empty();
    if (web.accessKeyFile().isPresent()) {
      AccessKey.Reading reading = AccessKey.read(web.accessKeyFile().get());
      if (reading instanceof AccessKey.Reading.Refused refused) {
        return new Outcome.Refused(refused.message());
      }
      key = Optional.of(((AccessKey.Reading.Good) reading).key());
    }
    if (web.certificate().isEmpty()) {
      return new Outcome.Ready(
          new WayIn(settings(config.listen(), web, key, false), Optional.empty(), List.of()));
    }
    CertificateFiles files =
        new CertificateFiles(web.certificate().get().chain(), web.certificate().get().key());
    TlsKeeper.Opening opening =
        TlsKeeper.open(files, web.names(), TimeSource.system(), clockTrusted);
    if (opening instanceof TlsKeeper.Opening.Refused refused) {
      ListenAddress here = new ListenAddress("127.0.0.1", config.listen().port());
      return new Outcome.Ready(
          new WayIn(
              settings(here, web, key, false),
              Optional.empty(),
              List.of(
                  refused.message()
                      + "; then start again: until then only this machine can open the page, at "
                      + "http://"
                      + here.text()
                      + "/")));
    }
    return new Outcome.Ready(
        new WayIn(
            settings(config.listen(), web, key, true),
            Optional.of(((TlsKeeper.Opening.Opened) opening).keeper()),
            List.of()));
  }

  private static AccessSettings settings(
      ListenAddress listen, WebSettings web, Optional<AccessKey> key, boolean tls) {
    return new AccessSettings(
        listen, web.names(), key, tls, web.behindProxy(), InetAddress::isLoopbackAddress);
  }

  /** Who may come in, as the records say. */
  Access access(EvidenceHistory history, RecordBook book) {
    return new Access(
        settings,
        Devices.load(history, book),
        new AuditTrail(book),
        TimeSource.system(),
        () ->
            Stream.concat(
                    trouble.stream(), tls.stream().flatMap(keeper -> keeper.trouble().stream()))
                .toList());
  }
}
