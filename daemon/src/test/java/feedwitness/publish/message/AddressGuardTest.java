package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import feedwitness.site.WebhookRoute.Reach;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Ranges of the IANA special-purpose address registries, first and last of each. */
class AddressGuardTest {
  @ParameterizedTest
  @CsvSource({
    "127.0.0.1, LOOPBACK",
    "127.255.255.255, LOOPBACK",
    "::1, LOOPBACK",
    "::ffff:127.0.0.1, LOOPBACK",
    "169.254.0.0, LINK_LOCAL",
    "169.254.169.254, LINK_LOCAL",
    "fe80::1, LINK_LOCAL",
    "febf::1, LINK_LOCAL",
    "10.0.0.0, PRIVATE",
    "10.255.255.255, PRIVATE",
    "172.16.0.0, PRIVATE",
    "172.31.255.255, PRIVATE",
    "192.168.0.1, PRIVATE",
    "fc00::1, PRIVATE",
    "fdff::1, PRIVATE",
    "::ffff:192.168.0.1, PRIVATE",
    "9.255.255.255, PUBLIC",
    "11.0.0.0, PUBLIC",
    "172.15.255.255, PUBLIC",
    "172.32.0.0, PUBLIC",
    "100.63.255.255, PUBLIC",
    "100.128.0.0, PUBLIC",
    "2a00:1450::1, PUBLIC",
    "64:ff9b::8.8.8.8, PUBLIC",
    "2002:808:808::1, PUBLIC"
  })
  void everyAddressHasItsClass(String address, Reach reach) throws Exception {
    assertEquals(Optional.of(reach), AddressGuard.reach(InetAddress.getByName(address)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.0.0.0",
        "0.1.2.3",
        "100.64.0.1",
        "192.0.0.1",
        "192.0.2.1",
        "192.88.99.1",
        "198.18.0.1",
        "198.19.255.255",
        "198.51.100.1",
        "203.0.113.1",
        "224.0.0.1",
        "240.0.0.1",
        "255.255.255.255",
        "::",
        "::127.0.0.1",
        "ff02::1",
        "fec0::1",
        "2001::1",
        "2001:db8::1",
        "3fff::1",
        "64:ff9b::127.0.0.1",
        "64:ff9b::10.0.0.1",
        "64:ff9b:1::10.0.0.1",
        "2002:7f00:1::1",
        "2002:c0a8:1::1",
        "100::1"
      })
  void whatLeadsNowhereIsNeverReached(String address) throws Exception {
    assertEquals(Optional.empty(), AddressGuard.reach(InetAddress.getByName(address)));
  }

  @Test
  void ofSeveralAddressesOnlyThoseAllowedAreUsed() throws Exception {
    InetAddress inside = InetAddress.getByName("192.168.1.5");
    InetAddress outside = InetAddress.getByName("9.9.9.9");
    InetAddress[] both = {inside, outside};
    assertEquals(List.of(outside), AddressGuard.allowed("hook", both, Reach.PUBLIC));
    assertEquals(List.of(inside), AddressGuard.allowed("hook", both, Reach.PRIVATE));
    assertThrows(
        UnknownHostException.class, () -> AddressGuard.allowed("hook", both, Reach.LOOPBACK));
    assertThrows(
        UnknownHostException.class,
        () -> AddressGuard.allowed("hook", new InetAddress[0], Reach.PUBLIC));
  }
}
