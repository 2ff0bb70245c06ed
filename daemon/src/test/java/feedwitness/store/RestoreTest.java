package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.TimeSource;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a backup must be before it replaces anything. */
class RestoreTest {
  @TempDir Path folder;

  private Path backupOf(String name, FileDeed deed) throws Exception {
    Path directory = folder.resolve(name);
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= 720; i++) {
        ledger.append(
            Nursery.measured(
                Nursery.LINE, Nursery.stamp(1, i, Nursery.MONDAY.plusSeconds(10L * i)), 1.5, 20));
      }
    }
    // sealed by the next start
    Nursery.open(directory).close();
    try (FileLook look = new FileLook(directory)) {
      deed.on(look);
    }
    Path backup = folder.resolve(name + ".zip");
    BackupWriter.write(new H2File(directory), backup, Map.of());
    return backup;
  }

  private interface FileDeed {
    void on(FileLook look) throws Exception;
  }

  private Restore.Outcome restore(Path backup, boolean evenDamaged) {
    return new Restore(folder.resolve("here"), TimeSource.system()).run(backup, evenDamaged);
  }

  @Test
  void readsEveryChunkBeforeItReplacesAnything() throws Exception {
    Path backup = backupOf("rotten", look -> look.rot("chunk", "k"));
    Restore.Outcome.Refused refused =
        assertInstanceOf(Restore.Outcome.Refused.class, restore(backup, false));
    assertTrue(refused.message().contains("checksum"), refused.message());
    assertTrue(refused.message().contains("--even-if-damaged"), refused.message());
    assertTrue(Files.notExists(folder.resolve("here/history.mv.db")));
    Restore.Outcome.Restored restored =
        assertInstanceOf(Restore.Outcome.Restored.class, restore(backup, true));
    assertEquals(1, restored.holds().damaged());
    assertEquals(720 - 359, restored.holds().samples());
  }

  @Test
  void refusesABackupOfANewerVersionInClearWords() throws Exception {
    Path backup = backupOf("newer", look -> look.run("insert into schema_version values (99)"));
    Restore.Outcome.Refused refused =
        assertInstanceOf(Restore.Outcome.Refused.class, restore(backup, false));
    assertTrue(refused.message().contains("layout version 99"), refused.message());
    assertTrue(refused.message().contains("install a newer Feedwitness"), refused.message());
  }

  @Test
  void refusesADatabaseThatIsNoHistory() throws Exception {
    Path backup = backupOf("other", look -> look.run("drop table schema_version"));
    Restore.Outcome.Refused refused =
        assertInstanceOf(Restore.Outcome.Refused.class, restore(backup, false));
    assertTrue(refused.message().contains("no history"), refused.message());
  }

  @Test
  void neverGivesTheNumberOfAStartTwice() throws Exception {
    Path backup = backupOf("early", look -> {});
    Path here = folder.resolve("here");
    for (int i = 0; i < 7; i++) {
      Nursery.open(here).close();
    }
    assertInstanceOf(Restore.Outcome.Restored.class, restore(backup, false));
    try (H2Ledger ledger = Nursery.open(here)) {
      assertEquals(8, ledger.boot());
      assertEquals(720, Nursery.scan(ledger, Nursery.LINE).size());
    }
  }

  @Test
  void aHistoryThatIsOnlyLookedAtIsNotChanged() throws Exception {
    backupOf("look", look -> {});
    Path file = folder.resolve("look/history.mv.db");
    byte[] before = Files.readAllBytes(file);
    StoredHistory.Opening opening = StoredHistory.open(folder.resolve("look"));
    try (StoredHistory history =
        assertInstanceOf(StoredHistory.Opening.Opened.class, opening).history()) {
      assertEquals(720, Nursery.scan(history, Nursery.LINE).size());
      assertEquals(720, history.inspect().samples());
    }
    assertTrue(java.util.Arrays.equals(before, Files.readAllBytes(file)));
  }
}
