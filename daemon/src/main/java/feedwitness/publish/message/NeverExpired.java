package feedwitness.publish.message;

import java.net.Socket;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.X509ExtendedTrustManager;

/**
 * Believes what another believes, unless the server's certificate is out of date. Java does not ask
 * that of a certificate that is trusted by itself, as a nursery's own server's in {@code ca-file}
 * may be.
 */
final class NeverExpired extends X509ExtendedTrustManager {
  private final X509ExtendedTrustManager usual;

  NeverExpired(X509ExtendedTrustManager usual) {
    this.usual = usual;
  }

  private static void current(X509Certificate[] chain) throws CertificateException {
    for (X509Certificate each : chain) {
      each.checkValidity();
    }
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String type, Socket socket)
      throws CertificateException {
    usual.checkServerTrusted(chain, type, socket);
    current(chain);
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String type, SSLEngine engine)
      throws CertificateException {
    usual.checkServerTrusted(chain, type, engine);
    current(chain);
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String type) throws CertificateException {
    usual.checkServerTrusted(chain, type);
    current(chain);
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String type, Socket socket)
      throws CertificateException {
    usual.checkClientTrusted(chain, type, socket);
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String type, SSLEngine engine)
      throws CertificateException {
    usual.checkClientTrusted(chain, type, engine);
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String type) throws CertificateException {
    usual.checkClientTrusted(chain, type);
  }

  @Override
  public X509Certificate[] getAcceptedIssuers() {
    return usual.getAcceptedIssuers();
  }
}
