package feedwitness.publish.message;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateFactory;
import java.security.cert.CertificateNotYetValidException;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLException;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import javax.net.ssl.X509ExtendedTrustManager;
import org.jspecify.annotations.Nullable;

/** Which certificates are believed, and what is wrong with one that is not. */
final class Trust {
  private Trust() {}

  /**
   * Those the system believes, or only those that go back to a given authority.
   *
   * @param caFile PEM
   * @throws IOException naming the file
   */
  static SSLContext context(Optional<Path> caFile) throws IOException {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      TrustManagerFactory managers =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      managers.init(caFile.isPresent() ? authorities(caFile.get()) : null);
      TrustManager[] all = managers.getTrustManagers();
      for (int i = 0; i < all.length; i++) {
        if (all[i] instanceof X509ExtendedTrustManager manager) {
          all[i] = new NeverExpired(manager);
        }
      }
      context.init(null, all, null);
      return context;
    } catch (GeneralSecurityException e) {
      throw new IOException("no TLS: " + e.getMessage(), e);
    }
  }

  private static KeyStore authorities(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    try (InputStream in = Files.newInputStream(file)) {
      int number = 0;
      for (Certificate each : CertificateFactory.getInstance("X.509").generateCertificates(in)) {
        store.setCertificateEntry("ca" + number++, each);
      }
      if (number == 0) {
        throw new IOException("there is no certificate in " + file);
      }
      return store;
    } catch (CertificateException e) {
      throw new IOException("%s is no PEM file with certificates".formatted(file), e);
    } catch (IOException e) {
      throw new IOException("certificates in %s: %s".formatted(file, e.getMessage()), e);
    }
  }

  /** Words for a certificate that was not believed; empty if that was not the trouble. */
  static Optional<String> trouble(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = next(cause)) {
      if (cause instanceof CertificateExpiredException) {
        return Optional.of("its certificate has expired; the receiver has to renew it");
      }
      if (cause instanceof CertificateNotYetValidException) {
        return Optional.of("its certificate is not valid yet; check the clock of this machine");
      }
      if (cause instanceof CertificateException) {
        return Optional.of(
            "its certificate is not for this name, or from nobody this machine trusts (%s); check"
                    .formatted(Words.line(String.valueOf(cause.getMessage()), 120))
                + " the name, or name the authority in ca-file");
      }
      if (cause instanceof SSLException && next(cause) == null) {
        return Optional.of(
            "no TLS was agreed on (%s); check port and security"
                .formatted(Words.line(String.valueOf(cause.getMessage()), 120)));
      }
    }
    return Optional.empty();
  }

  private static @Nullable Throwable next(Throwable cause) {
    return cause.getCause() == cause ? null : cause.getCause();
  }
}
