package feedwitness.publish.message;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;

/** Certificates as servers of the trade have them, made by the JDK's own tool, once a run. */
enum Certificates {
  GOOD("dns:localhost,ip:127.0.0.1", List.of("-validity", "30")),
  EXPIRED("dns:localhost,ip:127.0.0.1", List.of("-startdate", "-20d", "-validity", "10")),
  OF_ANOTHER_NAME("dns:other.quarry-end.example", List.of("-validity", "30"));

  static final String PASSWORD = "changeit";

  private final Path store;
  private final Path pem;

  Certificates(String names, List<String> validity) {
    try {
      Path folder = Files.createTempDirectory("certificates");
      folder.toFile().deleteOnExit();
      store = folder.resolve("store.p12");
      pem = folder.resolve("certificate.pem");
      List<String> make =
          new ArrayList<>(
              List.of("-genkeypair", "-alias", "it", "-keyalg", "EC", "-groupname", "secp256r1"));
      make.addAll(List.of("-dname", "CN=localhost", "-ext", "san=" + names));
      make.addAll(validity);
      keytool(store, make);
      keytool(store, List.of("-exportcert", "-rfc", "-alias", "it", "-file", pem.toString()));
      store.toFile().deleteOnExit();
      pem.toFile().deleteOnExit();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void keytool(Path store, List<String> arguments) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(Path.of(System.getProperty("java.home"), "bin/keytool").toString()));
    command.addAll(arguments);
    command.addAll(
        List.of("-keystore", store.toString(), "-storetype", "PKCS12", "-storepass", PASSWORD));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said =
        new String(
            process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    try {
      if (process.waitFor() != 0) {
        throw new IOException(said);
      }
    } catch (InterruptedException e) {
      throw new IOException(e);
    }
  }

  /** For a server. */
  SSLContext context() {
    try (InputStream in = Files.newInputStream(store)) {
      KeyStore keys = KeyStore.getInstance("PKCS12");
      keys.load(in, PASSWORD.toCharArray());
      KeyManagerFactory managers =
          KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
      managers.init(keys, PASSWORD.toCharArray());
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(managers.getKeyManagers(), null, null);
      return context;
    } catch (IOException | GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  Path store() {
    return store;
  }

  /** For those who are to trust it. */
  String pem() {
    return pem.toString();
  }
}
