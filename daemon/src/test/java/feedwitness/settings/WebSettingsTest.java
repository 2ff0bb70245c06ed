package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How others reach the page, as the configuration says it. */
class WebSettingsTest {
  @TempDir private Path folder;

  private Desk desk() {
    return new Desk(folder);
  }

  private ConfigOutcome.Read right(String text) {
    return desk().right(Desk.NURSERY + text);
  }

  private void fault(String text, String place, String... words) {
    desk().fault(Desk.NURSERY + text, place, words);
  }

  @Test
  void keepsThePageOnThisMachineUnlessToldOtherwise() {
    assertEquals(WebSettings.NONE, right("").config().web());
  }

  @Test
  void findsTheFilesBesideTheConfiguration() {
    WebSettings web =
        right(
                """
                [server]
                listen = "0.0.0.0:8460"
                [web]
                access-key-file = "access.key"
                names = ["Feed.Quarry-End.Example", "192.0.2.7"]
                certificate-file = "tls/chain.pem"
                private-key-file = "/etc/feedwitness/key.pem"
                """)
            .config()
            .web();
    Path real = folder.toAbsolutePath();
    assertEquals(
        new WebSettings(
            Optional.of(real.resolve("access.key")),
            List.of("feed.quarry-end.example", "192.0.2.7"),
            Optional.of(
                new WebSettings.CertificatePaths(
                    real.resolve("tls/chain.pem"), Path.of("/etc/feedwitness/key.pem"))),
            false),
        web);
  }

  @Test
  void refusesToBeReachedFromOtherMachinesWithoutAnAccessKey() {
    String open = "[server]\nlisten = \"0.0.0.0:8460\"\n";
    fault(open, "5:1", "no access key", "feedwitness access-key", "127.0.0.1:8460");
    fault(open + "[web]\nnames = [\"feed.example\"]\n", "7:1", "no access key");
    fault(
        "[web]\nnames = [\"feed.example\"]\nbehind-proxy = true\n",
        "5:1",
        "no access key",
        "feedwitness access-key");
  }

  @Test
  void saysThatWithoutTlsOthersCanListenIn() {
    ConfigOutcome.Read read =
        right(
            "[server]\nlisten = \"0.0.0.0:8460\"\n[web]\naccess-key-file = \"/etc/access.key\"\n");
    assertEquals(1, read.notes().size());
    assertTrue(read.notes().get(0).contains("without TLS"), read.notes()::toString);
  }

  @Test
  void namesWhatIsNoNameOfAMachine() {
    String start = "[web]\naccess-key-file = \"/etc/access.key\"\nnames = ";
    fault(start + "[\"https://feed.example\"]\n", "7:1", "'https://feed.example'", "without http");
    fault(start + "[\"feed.example:8460\"]\n", "7:1", "without port");
    fault(start + "[\"*.example\"]\n", "7:1", "is no name of a machine");
    fault(start + "[7]\n", "7:1", "entry 1 of names is no text");
    fault(start + "\"feed.example\"\n", "7:1", "is text, not a list of texts");
  }

  @Test
  void needsBothFilesOfACertificateAndANameBehindAProxy() {
    fault("[web]\ncertificate-file = \"/etc/chain.pem\"\n", "6:1", "without private-key-file");
    fault(
        "[web]\nprivate-key-file = \"~/key.pem\"\ncertificate-file = \"c\"\n",
        "6:1",
        "begins with ~");
    fault(
        "[web]\naccess-key-file = \"/etc/access.key\"\nbehind-proxy = true\n",
        "7:1",
        "needs the name");
    fault("[web]\naccess_key_file = \"k\"\n", "6:1", "did you mean 'access-key-file'?");
  }
}
