package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes on record stays on record. */
class EvidenceTest {
  private static final int PATIENCE_SECONDS = 30;

  @TempDir Path directory;

  private static EvidenceDraft note(String subject, String text) {
    return EvidenceDraft.of("note", subject, Map.of("text", text)).by("Gardener");
  }

  private static Evidence kept(CompletableFuture<Evidence> append) throws Exception {
    return append.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  private static Evidence keep(H2Ledger ledger, int minute, EvidenceDraft draft) throws Exception {
    return kept(
        ledger.append(stamp(ledger.boot(), minute, MONDAY.plusSeconds(60L * minute)), draft));
  }

  @Test
  void aRecordIsSafeAtOnceAndThereAfterARestart() throws Exception {
    Evidence first;
    try (H2Ledger ledger = Nursery.open(directory)) {
      first = keep(ledger, 1, note("line", "stock barrel filled, 2 kg House Feed"));
      assertEquals(List.of(first), ledger.evidence(EvidenceQuery.newest(10)));
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      Evidence second = keep(ledger, 2, note("tank", "ein Löffel mehr\nzweite Zeile"));
      assertEquals(first.id() + 1, second.id());
      assertEquals(List.of(second, first), ledger.evidence(EvidenceQuery.newest(10, "note")));
      assertEquals(Optional.of(first), ledger.evidence(first.id()));
      assertEquals("Gardener", first.author());
      assertEquals("1-1", first.key());
    }
    StoredHistory.Opening.Opened opened =
        assertInstanceOf(StoredHistory.Opening.Opened.class, StoredHistory.open(directory));
    try (StoredHistory stopped = opened.history()) {
      assertEquals(2, stopped.evidence(EvidenceQuery.newest(10)).size());
    }
  }

  @Test
  void recordsAreFoundByKindSubjectTimeAndPage() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      List<CompletableFuture<Evidence>> all = new ArrayList<>();
      for (int i = 0; i < 1_200; i++) {
        EvidenceDraft draft =
            EvidenceDraft.of(
                i % 3 == 0 ? "alarm" : "note", i % 2 == 0 ? "line" : "tank", Map.of("n", "" + i));
        Stamp at = stamp(ledger.boot(), i + 1, MONDAY.plusSeconds(60L * i));
        all.add(ledger.append(at, draft));
      }
      kept(all.get(all.size() - 1));
      assertEquals(400, ledger.evidence(EvidenceQuery.newest(1_000, "alarm")).size());
      assertEquals(200, ledger.evidence(EvidenceQuery.newest(1_000, "alarm").about("line")).size());
      List<Evidence> hour =
          ledger.evidence(
              EvidenceQuery.after(0, 1_000)
                  .within(MONDAY.plusSeconds(3_600), MONDAY.plusSeconds(7_200)));
      assertEquals("60", hour.get(0).field("n"));
      assertEquals(60, hour.size());
      List<Evidence> page = ledger.evidence(EvidenceQuery.newest(7));
      List<Evidence> next = ledger.evidence(EvidenceQuery.newest(7).before(page.get(6).id()));
      assertEquals("1192", next.get(0).field("n"));
    }
  }

  @Test
  void aPictureLiesBesideItsRecord() throws Exception {
    byte[] octets = new byte[Attachment.LIMIT_OCTETS];
    new java.util.Random(3).nextBytes(octets);
    Attachment photo = new Attachment("image/jpeg", Octets.of(octets));
    try (H2Ledger ledger = Nursery.open(directory)) {
      EvidenceDraft draft =
          new EvidenceDraft(
              "note",
              "bench 3",
              "Helper",
              new TreeMap<>(Map.of("text", "pale leaves")),
              Optional.of(photo));
      Evidence evidence = keep(ledger, 1, draft);
      assertTrue(evidence.hasAttachment());
      assertEquals(Optional.of(photo), ledger.attachment(evidence.id()));
      assertEquals(Optional.empty(), ledger.attachment(evidence.id() + 1));
    }
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Attachment("image/jpeg", Octets.of(new byte[Attachment.LIMIT_OCTETS + 1])));
    assertEquals(
        "attachment of 1000001 octets is above 1000000; send a smaller picture",
        refused.getMessage());
  }

  @Test
  void whatAWatcherKnewIsThereAfterARestart() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      ledger.keepState("drift", "one");
      ledger.keepState("drift", "two");
      ledger.append(measured(LINE, stamp(ledger.boot(), 1, MONDAY), 1.5, 20));
      Nursery.sync(ledger);
      assertEquals(Optional.of("two"), ledger.state("drift"));
      ledger.keepState("drift", "three");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(Optional.of("three"), ledger.state("drift"));
      assertEquals(Optional.empty(), ledger.state("alarms"));
    }
  }

  @Test
  void anUndatedRecordGetsItsDateWithTheSamplesOfItsBoot() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      Stamp undated = new Stamp(ledger.boot(), 1, 5_000_000_000L, 0, false);
      Evidence evidence = kept(ledger.append(undated, note("line", "before the clock was set")));
      assertEquals(
          List.of(),
          ledger.evidence(EvidenceQuery.newest(5).within(MONDAY, MONDAY.plusSeconds(60))));
      ledger.append(
          measured(LINE, new Stamp(ledger.boot(), 1, 6_000_000_000L, 1_000, false), 1, 20));
      Stamp dated =
          new Stamp(ledger.boot(), 2, 9_000_000_000L, MONDAY.plusSeconds(9).toEpochMilli(), true);
      ledger.append(measured(LINE, dated, 1, 20));
      assertEquals(
          MONDAY.plusSeconds(5),
          ledger
              .evidence(EvidenceQuery.newest(5).within(MONDAY, MONDAY.plusSeconds(60)))
              .get(0)
              .at()
              .wall());
      assertEquals(evidence.id(), 1);
    }
  }

  @Test
  void recordsAndPicturesAreSavedFromAFileThatNoDatabaseOpens() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= 40; i++) {
        keep(ledger, i, note("line", "note " + i + " ".repeat(i)));
      }
      keep(
          ledger,
          41,
          new EvidenceDraft(
              "note",
              "",
              "",
              new TreeMap<>(),
              Optional.of(new Attachment("image/png", Octets.ofHex("89 50 4e 47")))));
    }
    try (RandomAccessFile raw = new RandomAccessFile(new H2File(directory).path().toFile(), "rw")) {
      raw.write(new byte[8_192]);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(41, ledger.evidence(EvidenceQuery.newest(100)).size());
      assertTrue(ledger.attachment(41).isPresent());
    }
  }

  @Test
  void aRecordForAClosedStoreIsRefusedInWords() throws Exception {
    H2Ledger ledger = Nursery.open(directory);
    ledger.close();
    ExecutionException refused =
        assertThrows(ExecutionException.class, () -> keep(ledger, 1, note("line", "too late")));
    assertInstanceOf(IOException.class, refused.getCause());
    assertTrue(String.valueOf(refused.getMessage()).contains("try again when it runs"));
  }
}
