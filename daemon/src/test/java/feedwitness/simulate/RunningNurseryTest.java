package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class RunningNurseryTest {
  private static final String LINE = "\\d+\\.\\d,\\d+\\.\\d\\d";
  private static final Octets ASK_TANK = Octets.ofHex("0b 03 00 00 00 04 44 a3");

  @TempDir private Path dir;

  private static Nursery nursery(String schedule) {
    return Nurseries.with(5, Schedule.parse("t", schedule), Nurseries.local(17, 12, 0));
  }

  private static SimulatedClock clock(double speed) {
    return new SimulatedClock(TimeSource.system(), Nurseries.local(17, 12, 0), speed);
  }

  private static RandomAccessFile open(String link) throws IOException {
    return new RandomAccessFile(Path.of(link).toFile(), "rw");
  }

  /** The next whole line; what is left of the one before is skipped. */
  private static String line(RandomAccessFile slave) throws IOException {
    readLine(slave);
    return readLine(slave);
  }

  private static String readLine(RandomAccessFile slave) throws IOException {
    StringBuilder text = new StringBuilder();
    for (int octet = slave.read(); octet >= 0 && octet != '\n'; octet = slave.read()) {
      text.append((char) octet);
    }
    return text.toString().strip();
  }

  private static Octets ask(RandomAccessFile slave) throws IOException {
    slave.write(ASK_TANK.toArray());
    byte[] answer = new byte[13];
    slave.readFully(answer);
    return Octets.of(answer);
  }

  @Test
  void speaksOnRealPortsUnderStableLinks() throws IOException {
    try (RunningNursery running = NurseryRunner.start(nursery(""), clock(100), dir)) {
      assertEquals(
          dir.resolve("source").toString(), LinkAddress.parse(running.sourceLink()).text());
      assertEquals(dir.resolve("bus").toString(), LinkAddress.parse(running.busLink()).text());
      try (RandomAccessFile source = open(running.sourceLink());
          RandomAccessFile bus = open(running.busLink())) {
        assertTrue(line(source).matches(LINE));
        assertTrue(Crc16.holds(ask(bus)));
      }
      assertTrue(running.truth().time().isAfter(Nurseries.local(17, 12, 0)));
    }
    assertFalse(Files.exists(dir.resolve("source"), LinkOption.NOFOLLOW_LINKS));
    assertFalse(Files.exists(dir.resolve("bus"), LinkOption.NOFOLLOW_LINKS));
  }

  @Test
  void aCableCanBePulledAndPluggedInAgain() throws IOException {
    try (RunningNursery running = NurseryRunner.start(nursery(""), clock(1), dir)) {
      try (RandomAccessFile bus = open(running.busLink())) {
        ask(bus);
        running.unplug(Wire.BUS);
        assertFalse(Files.exists(dir.resolve("bus"), LinkOption.NOFOLLOW_LINKS));
        assertThrows(IOException.class, () -> ask(bus));
      }
      running.replug(Wire.BUS);
      try (RandomAccessFile bus = open(running.busLink())) {
        assertTrue(Crc16.holds(ask(bus)));
      }
    }
  }

  @Test
  void theScheduleCanPullACable() throws Exception {
    try (RunningNursery running =
        NurseryRunner.start(nursery("T+1m source unplug +30d"), clock(1000), dir)) {
      for (int i = 0; i < 500 && Files.exists(dir.resolve("source")); i++) {
        Thread.sleep(20);
      }
      assertFalse(Files.exists(dir.resolve("source"), LinkOption.NOFOLLOW_LINKS));
      running.replug(Wire.SOURCE);
      assertFalse(Files.exists(dir.resolve("source"), LinkOption.NOFOLLOW_LINKS));
      assertTrue(Files.exists(dir.resolve("bus")));
    }
  }

  @Test
  void aCableCanBeSilencedGarbledAndWrittenToByHand() throws IOException {
    try (RunningNursery running = NurseryRunner.start(nursery(""), clock(100), dir);
        RandomAccessFile source = open(running.sourceLink())) {
      line(source);
      running.silence(Wire.SOURCE, true);
      running.write(Wire.SOURCE, Octets.ofText("by hand\r\n"));
      String said = readLine(source);
      while (said.matches(LINE)) {
        said = readLine(source);
      }
      assertEquals("by hand", said);

      running.garble(Wire.SOURCE, true);
      running.silence(Wire.SOURCE, false);
      byte[] rubbish = new byte[400];
      source.readFully(rubbish);
      assertTrue(Octets.of(rubbish).toText().chars().anyMatch(octet -> octet > 126));
    }
  }

  @Test
  void aDeedCanBeBegunNow() throws IOException {
    try (RunningNursery running = NurseryRunner.start(nursery(""), clock(1), dir)) {
      running.begin("line in-air +10m");
      assertTrue(running.truth().line().inAir());
      assertThrows(IllegalArgumentException.class, () -> running.begin("line fly"));
    }
  }

  @Test
  void whereThereIsNoTerminalItSpeaksOverTcp() throws IOException {
    try (RunningNursery running = NurseryRunner.startOnTcp(nursery(""), clock(100))) {
      LinkAddress.Tcp bus = (LinkAddress.Tcp) LinkAddress.parse(running.busLink());
      assertTrue(Crc16.holds(askOver(bus)));
      running.unplug(Wire.BUS);
      assertThrows(IOException.class, () -> askOver(bus));
      running.replug(Wire.BUS);
      assertEquals(bus, LinkAddress.parse(running.busLink()));
      assertTrue(Crc16.holds(askOver(bus)));

      LinkAddress.Tcp source = (LinkAddress.Tcp) LinkAddress.parse(running.sourceLink());
      try (Socket socket = new Socket(source.host(), source.port());
          InputStream in = socket.getInputStream()) {
        String text = Octets.of(in.readNBytes(40)).toText();
        assertTrue(text.matches("(?s)(" + LINE + "\r\n)+.*"), text);
      }
    }
  }

  private static Octets askOver(LinkAddress.Tcp bus) throws IOException {
    try (Socket socket = new Socket(bus.host(), bus.port());
        OutputStream out = socket.getOutputStream();
        InputStream in = socket.getInputStream()) {
      out.write(ASK_TANK.toArray());
      return Octets.of(in.readNBytes(13));
    }
  }

  @Test
  void leavesAForeignFileAlone() throws IOException {
    Files.writeString(dir.resolve("bus"), "mine");
    IOException refused =
        assertThrows(IOException.class, () -> NurseryRunner.start(nursery(""), clock(1), dir));
    assertTrue(refused.toString().contains("exists and is no link"), refused::toString);
    assertEquals("mine", Files.readString(dir.resolve("bus")));
    assertFalse(Files.exists(dir.resolve("source"), LinkOption.NOFOLLOW_LINKS));
  }

  @Test
  void replacesALinkLeftFromAnEarlierRun() throws IOException {
    Files.createSymbolicLink(dir.resolve("bus"), Path.of("/dev/pts/nowhere"));
    try (RunningNursery running = NurseryRunner.start(nursery(""), clock(1), dir);
        RandomAccessFile bus = open(running.busLink())) {
      assertTrue(Crc16.holds(ask(bus)));
    }
  }

  @Test
  void aClockRefusesASpeedItCannotRun() {
    assertThrows(IllegalArgumentException.class, () -> clock(0));
    assertThrows(IllegalArgumentException.class, () -> clock(Double.NaN));
  }
}
