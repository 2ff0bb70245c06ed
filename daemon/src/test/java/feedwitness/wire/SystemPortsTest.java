package feedwitness.wire;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.quantity.SerialSettings;
import feedwitness.simulate.PseudoTerminal;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Real pseudo-terminals through the real serial library, and real sockets. */
@Timeout(60)
class SystemPortsTest {
  private static final SerialSettings LINE =
      new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1);

  @TempDir Path folder;

  @Test
  void readsAndWritesASerialPortThroughItsStableName() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open()) {
      Path stable = Files.createSymbolicLink(folder.resolve("source"), instrument.slavePath());
      try (Port port = opened(new LinkAddress.Serial(stable.toString()))) {
        instrument.write(Octets.ofText("351.2,12.41\r\n"));
        assertEquals("351.2,12.41\r\n", readAll(port, 13));
        port.write(Octets.ofText("R\r"));
        assertEquals("R\r", instrument.read(2000).toText());
      }
    }
  }

  @Test
  void aQuietPortReturnsNothing() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open();
        Port port = opened(new LinkAddress.Serial(instrument.slavePath().toString()))) {
      assertEquals(Octets.NONE, port.read(120));
    }
  }

  @Test
  void tellsAPulledCable() throws Exception {
    PseudoTerminal instrument = PseudoTerminal.open();
    try (Port port = opened(new LinkAddress.Serial(instrument.slavePath().toString()))) {
      instrument.close();
      PortLostException lost = assertThrows(PortLostException.class, () -> port.read(2000));
      assertTrue(String.valueOf(lost.getMessage()).contains("cable pulled"));
    }
  }

  @Test
  void followsTheStableNameToAnotherDevice() throws Exception {
    Path stable = folder.resolve("source");
    try (PseudoTerminal before = PseudoTerminal.open();
        PseudoTerminal after = PseudoTerminal.open()) {
      Files.createSymbolicLink(stable, before.slavePath());
      opened(new LinkAddress.Serial(stable.toString())).close();
      Files.delete(stable);
      Files.createSymbolicLink(stable, after.slavePath());
      try (Port port = opened(new LinkAddress.Serial(stable.toString()))) {
        after.write(Octets.ofText("hello"));
        assertEquals("hello", readAll(port, 5));
      }
    }
  }

  @Test
  void namesAPortThatIsNotThere() {
    PortOpener.Outcome.Refused refused =
        refused(new LinkAddress.Serial(folder.resolve("absent").toString()));
    assertEquals(PortOpener.Why.NO_SUCH_PORT, refused.why());
    assertTrue(refused.detail().contains("plug the cable in"), refused.detail());
  }

  @Test
  void saysWhenAnotherProgramHasThePort() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open()) {
      LinkAddress link = new LinkAddress.Serial(instrument.slavePath().toString());
      try (Port first = opened(link)) {
        PortOpener.Outcome.Refused refused = refused(link);
        assertEquals(PortOpener.Why.TAKEN, refused.why(), refused.detail());
        assertEquals(Octets.NONE, first.read(50));
      }
    }
  }

  @Test
  void namesAFileThatIsNoPort() throws Exception {
    Path file = Files.writeString(folder.resolve("notes.txt"), "no port");
    PortOpener.Outcome.Refused refused = refused(new LinkAddress.Serial(file.toString()));
    assertTrue(refused.detail().contains("notes.txt"), refused.detail());
  }

  @Test
  void readsATcpSerialServerAndTellsWhenItHangsUp() throws Exception {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Port port = opened(new LinkAddress.Tcp("127.0.0.1", server.getLocalPort()))) {
      try (Socket serial = server.accept()) {
        serial.getOutputStream().write("EC=1.500;T=18.40\n".getBytes(US_ASCII));
        assertEquals("EC=1.500;T=18.40\n", readAll(port, 17));
        port.write(Octets.ofText("?"));
        assertEquals('?', serial.getInputStream().read());
      }
      assertThrows(PortLostException.class, () -> port.read(2000));
    }
  }

  @Test
  void namesATcpSerialServerThatDoesNotAnswer() throws Exception {
    int free;
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      free = server.getLocalPort();
    }
    PortOpener.Outcome.Refused refused = refused(new LinkAddress.Tcp("127.0.0.1", free));
    assertTrue(refused.detail().contains("tcp:127.0.0.1:" + free), refused.detail());
  }

  private static String readAll(Port port, int length) throws PortLostException {
    StringBuilder text = new StringBuilder();
    for (int tries = 0; text.length() < length && tries < 50; tries++) {
      text.append(port.read(100).toText());
    }
    return text.toString();
  }

  private static Port opened(LinkAddress link) {
    PortOpener.Outcome outcome = new SystemPorts().open(link, LINE);
    return assertInstanceOf(PortOpener.Outcome.Opened.class, outcome, outcome::toString).port();
  }

  private static PortOpener.Outcome.Refused refused(LinkAddress link) {
    PortOpener.Outcome outcome = new SystemPorts().open(link, LINE);
    return assertInstanceOf(PortOpener.Outcome.Refused.class, outcome, outcome::toString);
  }
}
