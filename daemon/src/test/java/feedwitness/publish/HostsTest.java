package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.publish.access.AccessKey;
import feedwitness.publish.access.AccessSettings;
import feedwitness.quantity.ListenAddress;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The names a service on the network answers to. */
class HostsTest {
  @TempDir private Path folder;

  private Hosts open() throws Exception {
    Path file = folder.resolve("access.key");
    AccessKey.make(file);
    AccessKey key = ((AccessKey.Reading.Good) AccessKey.read(file)).key();
    return new Hosts(
        new AccessSettings(
            new ListenAddress("0.0.0.0", 8460),
            List.of("feed.quarry-end.example"),
            Optional.of(key),
            false,
            false,
            InetAddress::isLoopbackAddress));
  }

  private static InetAddress at(String address) throws Exception {
    return InetAddress.getByName(address);
  }

  @Test
  void answersToConfiguredNamesAndToTheAddressItWasReachedAt() throws Exception {
    Hosts hosts = open();
    assertTrue(hosts.allowed("Feed.Quarry-End.example", at("192.0.2.7")));
    assertTrue(hosts.allowed("192.0.2.7", at("192.0.2.7")));
    assertTrue(hosts.allowed("[2001:db8::7]", at("2001:db8:0:0:0:0:0:7")));
  }

  @Test
  void answersToNoOther() throws Exception {
    Hosts hosts = open();
    for (String host :
        new String[] {"192.0.2.8", "[2001:db8::8]", "rebound.example", "3221225991", "", "[]"}) {
      assertFalse(hosts.allowed(host, at("192.0.2.7")), host);
    }
  }

  @Test
  void answersToNoAddressWithoutAKey() throws Exception {
    Hosts hosts = new Hosts(AccessSettings.desk(ListenAddress.DEFAULT));
    assertFalse(hosts.allowed("192.0.2.7", at("192.0.2.7")));
    assertTrue(hosts.allowed("localhost", at("127.0.0.1")));
  }

  @Test
  void takesThePortOffAName() {
    assertEquals("feed.example", Hosts.withoutPort("feed.example:8460"));
    assertEquals("[::1]", Hosts.withoutPort("[::1]:8460"));
    assertEquals("[::1]", Hosts.withoutPort("[::1]"));
  }
}
