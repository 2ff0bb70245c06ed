package feedwitness.app;

import feedwitness.publish.access.AccessKey;
import feedwitness.publish.access.Passport;
import feedwitness.settings.Config;
import feedwitness.settings.WebSettings;
import java.util.Optional;

/** What the configuration of a service gives its commands to show. */
final class Passports {
  private Passports() {}

  /**
   * A key that this user may not read is left out: a service on loopback asks for none, and any
   * other says that it does not know the caller.
   */
  static Passport of(Config config) {
    WebSettings web = config.web();
    Optional<AccessKey> key =
        web.accessKeyFile()
            .map(AccessKey::read)
            .filter(AccessKey.Reading.Good.class::isInstance)
            .map(reading -> ((AccessKey.Reading.Good) reading).key());
    return new Passport(key, web.certificate().map(WebSettings.CertificatePaths::chain));
  }
}
