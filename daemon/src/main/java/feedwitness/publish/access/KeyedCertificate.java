package feedwitness.publish.access;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.CertificateParsingException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A certificate chain and the private key of its first certificate. */
public final class KeyedCertificate {
  private static final int DNS_NAME = 2;
  private static final int IP_ADDRESS = 7;

  private final List<X509Certificate> chain;
  private final PrivateKey key;

  KeyedCertificate(List<X509Certificate> chain, PrivateKey key) {
    this.chain = List.copyOf(chain);
    this.key = key;
  }

  /** When it ends. */
  public Instant end() {
    return own().getNotAfter().toInstant();
  }

  /** The service's own certificate. */
  public X509Certificate own() {
    return chain.get(0);
  }

  /** As the TLS of the platform takes it; in memory only, so the password guards nothing. */
  KeyStore keyStore(char[] password) {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      store.setKeyEntry("page", key, password, chain.toArray(new Certificate[0]));
      return store;
    } catch (GeneralSecurityException | IOException e) {
      throw new IllegalStateException("a certificate that was read could not be kept", e);
    }
  }

  /** Names and addresses it is for (RFC 5280 §4.2.1.6); the common name has long not counted. */
  static List<String> names(X509Certificate certificate) {
    List<String> names = new ArrayList<>();
    try {
      var alternatives = certificate.getSubjectAlternativeNames();
      if (alternatives != null) {
        for (List<?> each : alternatives) {
          if (each.get(0).equals(DNS_NAME) || each.get(0).equals(IP_ADDRESS)) {
            names.add(String.valueOf(each.get(1)).toLowerCase(Locale.ROOT));
          }
        }
      }
    } catch (CertificateParsingException e) {
      return List.of();
    }
    return names;
  }

  /** Whether a name of a certificate stands for a name; {@code *} for one label (RFC 6125). */
  static boolean covers(String pattern, String name) {
    return pattern.equals(name)
        || (pattern.startsWith("*.")
            && name.indexOf('.') > 0
            && name.substring(name.indexOf('.')).equals(pattern.substring(1)));
  }
}
