package feedwitness.publish.access;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.Key;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/** Makes certificates with the keytool of the platform, as PEM files. */
public final class TestCertificates {
  private static final String PASSWORD = "for-tests-only";

  private TestCertificates() {}

  /**
   * One that signs itself, for localhost, 127.0.0.1 and feed.quarry-end.example.
   *
   * @param from days before now when it begins, such as {@code -1d}
   * @param days how long it is good
   */
  public static CertificateFiles make(Path folder, String name, String from, int days)
      throws Exception {
    return make(folder, name, "EC", from, days);
  }

  static CertificateFiles make(Path folder, String name, String kind, String from, int days)
      throws Exception {
    Path store = folder.resolve(name + ".p12");
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-alias",
                "page",
                "-keyalg",
                kind,
                "-dname",
                "CN=Quarry End Nursery",
                "-ext",
                "san=dns:localhost,ip:127.0.0.1,dns:feed.quarry-end.example",
                "-startdate",
                from,
                "-validity",
                Integer.toString(days),
                "-storetype",
                "PKCS12",
                "-keystore",
                store.toString(),
                "-storepass",
                PASSWORD));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    KeyStore keys = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(store)) {
      keys.load(in, PASSWORD.toCharArray());
    }
    Key key = keys.getKey("page", PASSWORD.toCharArray());
    CertificateFiles files =
        new CertificateFiles(folder.resolve(name + ".pem"), folder.resolve(name + "-key.pem"));
    Files.writeString(files.chain(), pem("CERTIFICATE", keys.getCertificate("page").getEncoded()));
    Files.writeString(files.key(), pem("PRIVATE KEY", key.getEncoded()));
    Files.delete(store);
    return files;
  }

  private static String pem(String what, byte[] der) {
    String text = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(der);
    return "-----BEGIN %s-----\n%s\n-----END %s-----\n".formatted(what, text, what);
  }
}
