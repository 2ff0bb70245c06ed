package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Octets;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class PseudoTerminalTest {
  private static Octets readExactly(RandomAccessFile slave, int length) throws IOException {
    byte[] got = new byte[length];
    slave.readFully(got);
    return Octets.of(got);
  }

  private static Octets readAtLeast(PseudoTerminal terminal, int length) throws IOException {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < 100 && all.length() < length; i++) {
      all.append(terminal.read(100).toText());
    }
    return Octets.ofText(all.toString());
  }

  @Test
  void everyOctetCrossesBothWaysUntranslated() throws IOException {
    StringBuilder every = new StringBuilder();
    for (int i = 0; i < 256; i++) {
      every.append((char) i);
    }
    Octets all = Octets.ofText(every.toString());
    try (PseudoTerminal terminal = PseudoTerminal.open();
        RandomAccessFile slave = new RandomAccessFile(terminal.slavePath().toFile(), "rw")) {
      assertEquals(256, terminal.write(all));
      assertEquals(all, readExactly(slave, 256));

      slave.write(all.toArray());
      assertEquals(all, readAtLeast(terminal, 256));
    }
  }

  @Test
  void aSilentLineReadsAsNothing() throws IOException {
    try (PseudoTerminal terminal = PseudoTerminal.open()) {
      assertEquals(Octets.NONE, terminal.read(0));
      assertEquals(Octets.NONE, terminal.read(30));
    }
  }

  @Test
  void knowsWhetherSomebodyListens() throws IOException {
    try (PseudoTerminal terminal = PseudoTerminal.open()) {
      assertFalse(terminal.hasListener());
      try (RandomAccessFile slave = new RandomAccessFile(terminal.slavePath().toFile(), "rw")) {
        assertTrue(terminal.hasListener());
        slave.write(1);
      }
      assertFalse(terminal.hasListener());
    }
  }

  @Test
  void aPulledCableEndsBothSides() throws IOException {
    PseudoTerminal terminal = PseudoTerminal.open();
    try (RandomAccessFile slave = new RandomAccessFile(terminal.slavePath().toFile(), "rw")) {
      terminal.close();
      terminal.close();
      assertFalse(Files.exists(terminal.slavePath()));
      assertThrows(IOException.class, () -> terminal.read(10));
      assertThrows(IOException.class, () -> terminal.write(Octets.ofHex("41")));
      int after;
      try {
        after = slave.read();
      } catch (IOException e) {
        after = -1;
      }
      assertEquals(-1, after);
    }
  }

  @Test
  void anUnreadLineLosesOctetsAndBlocksNobody() throws IOException {
    Octets burst = Octets.of(new byte[10_000]);
    try (PseudoTerminal terminal = PseudoTerminal.open()) {
      int went = 0;
      for (int i = 0; i < 20; i++) {
        went += terminal.write(burst);
      }
      assertTrue(went < 200_000, () -> "the kernel took everything");
    }
  }
}
