package feedwitness.publish.access;

import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;

/**
 * What a command on the same machine shows to its service, and by what it knows the service: the
 * very certificate that the configuration names, whatever name the command calls it by.
 */
public final class Passport {
  /** Nothing to show: enough for a service that listens on loopback. */
  public static final Passport NONE = new Passport(Optional.empty(), Optional.empty());

  private final Optional<AccessKey> key;
  private final Optional<Path> chain;

  /** {@code chain}: the PEM file of the certificate, as the service reads it. */
  public Passport(Optional<AccessKey> key, Optional<Path> chain) {
    this.key = key;
    this.chain = chain;
  }

  /**
   * A client that knows the service.
   *
   * @throws IOException in words for people if the certificate cannot be read
   */
  public HttpClient.Builder equip(HttpClient.Builder client) throws IOException {
    if (chain.isPresent()) {
      client.sslContext(context(CertificateFiles.own(chain.get())));
    }
    return client;
  }

  /** A request that says who asks. */
  public HttpRequest.Builder sign(HttpRequest.Builder request) {
    key.ifPresent(known -> request.header("Authorization", known.authorization()));
    return request;
  }

  private static SSLContext context(X509Certificate expected) throws IOException {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, new TrustManager[] {new OnlyThis(expected)}, null);
      return context;
    } catch (GeneralSecurityException e) {
      throw new IOException("TLS cannot be used here: " + e.getMessage(), e);
    }
  }

  /** Trusts one certificate; the platform's own check of names does not apply to it. */
  private static final class OnlyThis extends X509ExtendedTrustManager {
    private final X509Certificate expected;

    OnlyThis(X509Certificate expected) {
      this.expected = expected;
    }

    private void check(X509Certificate[] shown) throws CertificateException {
      if (shown.length == 0 || !shown[0].equals(expected)) {
        throw new CertificateException("what answers shows another certificate than configured");
      }
    }

    @Override
    public void checkServerTrusted(X509Certificate[] shown, String type, Socket socket)
        throws CertificateException {
      check(shown);
    }

    @Override
    public void checkServerTrusted(X509Certificate[] shown, String type, SSLEngine engine)
        throws CertificateException {
      check(shown);
    }

    @Override
    public void checkServerTrusted(X509Certificate[] shown, String type)
        throws CertificateException {
      check(shown);
    }

    @Override
    public void checkClientTrusted(X509Certificate[] shown, String type, Socket socket)
        throws CertificateException {
      throw new CertificateException("no client is asked for a certificate");
    }

    @Override
    public void checkClientTrusted(X509Certificate[] shown, String type, SSLEngine engine)
        throws CertificateException {
      throw new CertificateException("no client is asked for a certificate");
    }

    @Override
    public void checkClientTrusted(X509Certificate[] shown, String type)
        throws CertificateException {
      throw new CertificateException("no client is asked for a certificate");
    }

    @Override
    public X509Certificate[] getAcceptedIssuers() {
      return List.of(expected).toArray(new X509Certificate[0]);
    }
  }
}
