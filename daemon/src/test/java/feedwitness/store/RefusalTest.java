package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.History;
import feedwitness.quantity.TimeSource;
import feedwitness.store.LedgerOpening.Reason;
import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RefusalTest {
  @TempDir Path directory;

  private LedgerOpening.Refused refused(Path where) {
    LedgerOpening opening = H2Ledger.open(Nursery.settings(where), TimeSource.system());
    if (opening instanceof LedgerOpening.Opened opened) {
      opened.ledger().close();
      throw new AssertionError("opened");
    }
    return (LedgerOpening.Refused) opening;
  }

  @Test
  void twoServicesOnOneFileAreToldApart() throws Exception {
    Process other = OtherProcess.start(directory, "hold");
    try (BufferedReader output = other.inputReader(StandardCharsets.UTF_8)) {
      assertEquals("opened 1", output.readLine());
      LedgerOpening.Refused refused = refused(directory);
      assertEquals(Reason.LOCKED, refused.reason());
      assertTrue(refused.message().contains("another process"), refused.message());
      assertTrue(refused.message().contains(directory.toString()), refused.message());
      other.getOutputStream().close();
      other.waitFor();
    } finally {
      other.destroyForcibly();
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(2, ledger.boot());
    }
  }

  @Test
  void aDirectoryNobodyMayWriteToIsNamedAndLeftAlone() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(1, ledger.boot());
    }
    byte[] before = Files.readAllBytes(new H2File(directory).path());
    Set<PosixFilePermission> usual = Files.getPosixFilePermissions(directory);
    Files.setPosixFilePermissions(directory, PosixFilePermissions.fromString("r-xr-xr-x"));
    Process other = OtherProcess.startWithoutPrivilege(directory, "hold");
    try (BufferedReader output = other.inputReader(StandardCharsets.UTF_8)) {
      String words = String.valueOf(output.readLine());
      assertTrue(words.startsWith("refused NOT_WRITABLE data directory: " + directory), words);
      assertTrue(words.contains("give the user of the service the right to write"), words);
      other.waitFor();
    } finally {
      other.destroyForcibly();
      Files.setPosixFilePermissions(directory, usual);
    }
    assertArrayEquals(before, Files.readAllBytes(new H2File(directory).path()));
  }

  @Test
  void aSecondOpeningInTheSameProcessIsRefusedToo() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(Reason.LOCKED, refused(directory).reason());
      assertEquals(1, ledger.boot());
    }
  }

  @Test
  void aFileOfANewerProgramIsRefusedAndLeftAlone() throws Exception {
    Nursery.open(directory).close();
    try (FileLook look = new FileLook(directory)) {
      look.run("insert into schema_version values (99)");
    }
    LedgerOpening.Refused refused = refused(directory);
    assertEquals(Reason.NEWER, refused.reason());
    assertTrue(refused.message().contains("99"), refused.message());
    assertTrue(refused.message().contains("install a newer Feedwitness"), refused.message());
    try (FileLook look = new FileLook(directory)) {
      assertEquals(1, look.count("boot"));
    }
  }

  @Test
  void aBasisOfANewerProgramIsRefused() throws Exception {
    Nursery.open(directory).close();
    try (FileLook look = new FileLook(directory)) {
      look.run("insert into basis values (1, 'rules=99;profile=x')");
    }
    LedgerOpening.Refused refused = refused(directory);
    assertEquals(Reason.NEWER, refused.reason());
    assertTrue(refused.message().contains("rules 99"), refused.message());
  }

  @Test
  void aFileInPlaceOfTheDirectoryIsNamed() throws Exception {
    Path file = Files.createFile(directory.resolve("data"));
    LedgerOpening.Refused refused = refused(file);
    assertEquals(Reason.NOT_WRITABLE, refused.reason());
    assertTrue(refused.message().contains(file.toString()), refused.message());
    assertEquals(Reason.NOT_WRITABLE, refused(directory.resolve("a;b")).reason());
  }

  @Test
  void anOlderLayoutIsBroughtForwardAfterABackup() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      ledger.append(Nursery.measured(Nursery.LINE, Nursery.stamp(1, 1, Nursery.MONDAY), 1.5, 20));
    }
    List<Migration> steps = new ArrayList<>(Migration.all());
    int next = new Migrator(steps).newest() + 1;
    steps.add(
        new Migration(
            next, List.of("alter table boot add column if not exists offset_millis bigint")));
    LedgerOpening opening =
        new LedgerOpener(
                Nursery.settings(directory),
                TimeSource.system(),
                new Migrator(steps),
                new H2File(directory),
                () -> Long.MAX_VALUE)
            .open();
    try (H2Ledger ledger = ((LedgerOpening.Opened) opening).ledger()) {
      assertEquals(1, Nursery.scan(ledger, Nursery.LINE).size());
    }
    assertTrue(Files.size(directory.resolve("history-before-version-%d.zip".formatted(next))) > 0);
    assertEquals(Reason.NEWER, refused(directory).reason());
  }

  @Test
  void quartersOfAnHourAreKeptThroughAChangeOfLayout() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 0; i < 600; i++) {
        ledger.append(
            Nursery.measured(
                Nursery.LINE,
                Nursery.stamp(1, i + 1, Nursery.MONDAY.plusSeconds(60L * i)),
                1.5,
                20));
      }
    }
    Nursery.open(directory).close();
    try (FileLook look = new FileLook(directory)) {
      look.run(
          "update rollup_hour h set quarters ="
              + " (select packed from rollup_quarter q where q.k = h.k)");
      look.run("alter table rollup_hour alter column quarters set not null");
      look.run("drop table rollup_quarter");
      look.run("drop table copy");
      look.run("delete from schema_version where version >= 3");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      History.Course course =
          ledger.course(
              Nursery.LINE, Nursery.MONDAY, Nursery.MONDAY.plus(Duration.ofHours(10)), 40);
      assertEquals(Duration.ofMinutes(15), course.bucketWidth());
      assertTrue(course.buckets().stream().allMatch(bucket -> bucket.readings() == 15));
    }
    try (FileLook look = new FileLook(directory)) {
      assertEquals(10, look.count("rollup_quarter"));
      assertTrue(look.count("copy") >= 3, "the point, its basis and a boot");
    }
  }

  @Test
  void aChunkThatRottedIsReportedAndTheRestIsRead() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= 720; i++) {
        ledger.append(
            Nursery.measured(
                Nursery.LINE, Nursery.stamp(1, i, Nursery.MONDAY.plusSeconds(10L * i)), 1.5, 20));
      }
    }
    Nursery.open(directory).close();
    try (FileLook look = new FileLook(directory)) {
      look.rot("chunk", "k");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(720 - 359, Nursery.scan(ledger, Nursery.LINE).size());
      String words = ledger.trouble().orElseThrow();
      assertTrue(words.contains("2026-06-01T06:00:00Z of line"), words);
      assertTrue(words.contains("restore a backup"), words);
    }
  }

  @Test
  void unsealedSamplesThatRottedAreSetAsideForSalvage() throws Exception {
    Process other = OtherProcess.start(directory, "append");
    try (BufferedReader output = other.inputReader(StandardCharsets.UTF_8)) {
      for (String line = output.readLine(); line != null; line = output.readLine()) {
        if (line.startsWith("durable ")) {
          other.toHandle().destroyForcibly();
        }
      }
      other.waitFor();
    } finally {
      other.destroyForcibly();
    }
    try (FileLook look = new FileLook(directory)) {
      assertTrue(look.count("hot") > 0);
      look.rot("hot", "n");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertTrue(ledger.trouble().orElseThrow().contains("set aside"));
    }
    try (FileLook look = new FileLook(directory)) {
      assertEquals(1, look.count("damaged"));
      assertEquals(0, look.count("hot"));
    }
  }
}
