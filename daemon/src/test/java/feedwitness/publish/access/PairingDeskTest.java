package feedwitness.publish.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.host.DiskRoom;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import java.net.InetAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Codes and devices over the real store. */
@Timeout(60)
class PairingDeskTest {
  @TempDir private Path folder;
  private Optional<H2Ledger> open = Optional.empty();

  @BeforeEach
  void openTheStore() {
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                folder, Duration.ofSeconds(1), StoreSettings.DEFAULT_QUEUE, 0, Optional.empty()),
            TimeSource.system(),
            new DiskRoom(folder));
    open = Optional.of(assertInstanceOf(LedgerOpening.Opened.class, opening).ledger());
  }

  @AfterEach
  void closeTheStore() {
    open.orElseThrow().close();
  }

  private Devices devices() {
    H2Ledger ledger = open.orElseThrow();
    return Devices.load(
        ledger,
        draft -> ledger.append(new Stamp(ledger.boot(), 0, 0, 1_780_300_800_000L, true), draft));
  }

  private static PairingDesk desk(Devices devices) {
    TimeSource clock = TimeSource.system();
    return new PairingDesk(clock, new Throttle(clock), devices);
  }

  private static InetAddress phone() throws Exception {
    return InetAddress.getByName("192.0.2.7");
  }

  private static String wrong(String code) {
    return code.equals("00000000") ? "00000001" : "00000000";
  }

  @Test
  void looksAtFiveGuessesHoweverManyComeAtOnce() throws Exception {
    PairingDesk desk = desk(devices());
    String code = wrong(desk.offer(Role.SEE, Caller.DESK));
    InetAddress from = phone();
    ExecutorService hands = Executors.newFixedThreadPool(16);
    List<Future<PairingOutcome>> guesses = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      guesses.add(hands.submit(() -> desk.redeem(code, "Guess", from)));
    }
    int lookedAt = 0;
    for (Future<PairingOutcome> guess : guesses) {
      if (guess.get() instanceof PairingOutcome.Refused) {
        lookedAt++;
      }
    }
    hands.shutdown();
    assertEquals(Throttle.PER_ADDRESS, lookedAt);
  }

  @Test
  void letsOneDeviceInByACodeHoweverManyTypeItAtOnce() throws Exception {
    Devices devices = devices();
    PairingDesk desk = desk(devices);
    String code = desk.offer(Role.SEE, Caller.DESK);
    ExecutorService hands = Executors.newFixedThreadPool(8);
    List<Future<PairingOutcome>> tries = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      String name = "Phone " + i;
      InetAddress from = InetAddress.getByName("192.0.2." + i);
      tries.add(hands.submit(() -> desk.redeem(code, name, from)));
    }
    int paired = 0;
    for (Future<PairingOutcome> each : tries) {
      if (each.get() instanceof PairingOutcome.Paired) {
        paired++;
      }
    }
    hands.shutdown();
    assertEquals(1, paired);
    assertEquals(1, devices.all().size());
  }

  @Test
  void aFifthCodePutsTheOldestOutOfUse() throws Exception {
    PairingDesk desk = desk(devices());
    List<String> codes = new ArrayList<>();
    for (int i = 0; i <= PairingCodes.MOST; i++) {
      codes.add(desk.offer(Role.SEE, Caller.DESK));
    }
    assertInstanceOf(PairingOutcome.Refused.class, desk.redeem(codes.get(0), "A", phone()));
    assertInstanceOf(PairingOutcome.Paired.class, desk.redeem(codes.get(1), "B", phone()));
  }

  @Test
  void findsItsDevicesAgainInTheStoreAndHasRoomForSixtyFour() throws Exception {
    Devices devices = devices();
    PairingDesk desk = desk(devices);
    List<String> tokens = new ArrayList<>();
    for (int i = 0; i < Devices.MOST; i++) {
      PairingOutcome outcome =
          desk.redeem(desk.offer(Role.SEE_AND_ACT, Caller.DESK), "Phone " + i, phone());
      tokens.add(assertInstanceOf(PairingOutcome.Paired.class, outcome).token());
    }
    PairingOutcome more = desk.redeem(desk.offer(Role.SEE, Caller.DESK), "More", phone());
    assertTrue(
        assertInstanceOf(PairingOutcome.Refused.class, more).message().contains("64 devices"));
    assertEquals(Devices.Revocation.DONE, devices.revoke(devices.all().get(7).id(), "desk"));
    Devices again = devices();
    assertEquals(devices.all(), again.all());
    assertEquals("Phone 8", again.byToken(tokens.get(8)).orElseThrow().name());
    assertTrue(again.byToken(tokens.get(7)).isEmpty());
    assertTrue(again.byToken("x".repeat(43)).isEmpty());
  }
}
