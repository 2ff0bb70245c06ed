package feedwitness.store;

import static feedwitness.store.Nursery.DRAIN;
import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.TANK;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.missing;
import static feedwitness.store.Nursery.scan;
import static feedwitness.store.Nursery.stamp;
import static feedwitness.store.Nursery.sync;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RememberingTest {
  @TempDir Path directory;

  private static List<Measurement> oddOnes(int boot, PointName point) {
    double[] odd = {
      Double.NaN,
      -0.0,
      0,
      1e300,
      Double.MIN_VALUE,
      Double.POSITIVE_INFINITY,
      Math.PI,
      2.86f,
      2.86,
      1413.0,
      -3.25,
      1e-7,
      0.1 + 0.2
    };
    List<Measurement> list = new ArrayList<>();
    long sequence = 0;
    for (double conductivity : odd) {
      for (double temperature : odd) {
        sequence++;
        Stamp stamp =
            new Stamp(
                boot,
                sequence,
                sequence * 999_999_937L,
                MONDAY.toEpochMilli() + sequence * 1_007,
                true);
        list.add(
            measured(
                point,
                stamp,
                new Reading(
                    conductivity,
                    List.of(ConductivityUnit.values()).get((int) (sequence % 6)),
                    temperature,
                    List.of(TemperatureUnit.values()).get((int) (sequence % 2))),
                sequence % 3 == 0 ? Nursery.WATER : Nursery.LINEAR));
      }
    }
    return list;
  }

  @Test
  void givesBackEveryIndicationBitForBit() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      List<Measurement> odd = oddOnes(ledger.boot(), LINE);
      odd.forEach(ledger::append);
      assertEquals(odd, scan(ledger, LINE), "still in memory");
      sync(ledger);
      assertEquals(odd, scan(ledger, LINE), "in hot rows");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(oddOnes(1, LINE), scan(ledger, LINE), "in sealed chunks after a restart");
    }
  }

  @Test
  void keepsWhyAReadingIsMissing() {
    Measurement pulled =
        missing(
            TANK,
            stamp(1, 1, MONDAY),
            Missing.Cause.CABLE_PULLED,
            "tank: /dev/serial/by-id/usb-1 is gone since 06:00; plug the cable in again");
    try (H2Ledger ledger = Nursery.open(directory)) {
      ledger.append(pulled);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(List.of(pulled), scan(ledger, TANK));
      assertEquals(Optional.of(pulled), ledger.latest(TANK));
    }
  }

  @Test
  void shortensAReasonThatWouldNotFitRatherThanStopRecording() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      ledger.append(
          missing(TANK, stamp(1, 1, MONDAY), Missing.Cause.PORT_FAILED, "x".repeat(3_000_000)));
      Nursery.sync(ledger);
      Missing kept = (Missing) scan(ledger, TANK).get(0).sample();
      assertEquals("x".repeat(1_999) + "…", kept.detail());
    }
  }

  @Test
  void keepsWhatAPersonTypedAsTyped() {
    Measurement typed =
        Nursery.typed(
            DRAIN,
            stamp(1, 1, MONDAY),
            new Reading(21.3, ConductivityUnit.CF, Double.NaN, TemperatureUnit.FAHRENHEIT));
    try (H2Ledger ledger = Nursery.open(directory)) {
      ledger.append(typed);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(List.of(typed), scan(ledger, DRAIN));
    }
  }

  @Test
  void continuesAfterARestart() {
    List<Measurement> kept = new ArrayList<>();
    for (int boot = 1; boot <= 3; boot++) {
      try (H2Ledger ledger = Nursery.open(directory)) {
        assertEquals(boot, ledger.boot());
        assertEquals(0, ledger.durableThrough().sequence());
        for (int i = 1; i <= 50; i++) {
          Measurement m =
              measured(
                  LINE, stamp(boot, i, MONDAY.plusSeconds(boot * 600L + i)), 1.5 + i / 1000.0, 19);
          ledger.append(m);
          kept.add(m);
        }
        assertEquals(kept, scan(ledger, LINE));
        assertEquals(Optional.of(kept.get(kept.size() - 1)), ledger.latest(LINE));
        assertEquals(Optional.of(kept.get(kept.size() - 1).stamp().wall()), ledger.newest());
      }
    }
  }

  @Test
  void publishesTheMarkOnlyForWhatIsOnDisk() {
    StoreSettings seldom = new StoreSettings(directory, Duration.ofSeconds(60), 1_024);
    try (H2Ledger ledger = Nursery.open(seldom)) {
      for (int i = 1; i <= 40; i++) {
        ledger.append(measured(LINE, stamp(1, i, MONDAY.plusSeconds(i)), 1.5, 19));
      }
      assertEquals(0, ledger.durableThrough().sequence());
      sync(ledger);
      assertEquals(40, ledger.durableThrough().sequence());
      assertEquals(1, ledger.durableThrough().boot());
      assertEquals(Optional.empty(), ledger.trouble());
    }
  }

  @Test
  void sealsHoursWhileRecordingAndReadsAcrossTheSeal() throws Exception {
    List<Measurement> kept = new ArrayList<>();
    try (H2Ledger ledger = Nursery.open(directory)) {
      long sequence = 0;
      for (int i = 0; i < 1_200; i++) {
        for (PointName point : List.of(LINE, TANK)) {
          Measurement m =
              measured(
                  point,
                  stamp(1, ++sequence, MONDAY.plusSeconds(10L * i)),
                  1.5 + (i % 37) / 1000.0,
                  18 + (i % 11) / 10.0);
          ledger.append(m);
          if (point.equals(LINE)) {
            kept.add(m);
          }
        }
        if (i % 100 == 0) {
          sync(ledger);
          assertEquals(kept, scan(ledger, LINE));
        }
      }
      sync(ledger);
      // a second one, so that the sealing after the first is done
      sync(ledger);
      assertEquals(kept, scan(ledger, LINE));
    }
    try (FileLook look = new FileLook(directory)) {
      assertTrue(look.count("chunk") >= 6, "three hours and more of two points");
      assertEquals(look.count("chunk"), look.count("rollup_hour"));
      assertEquals(look.count("chunk"), look.count("rollup_minute"));
    }
  }

  @Test
  void refusesToKeepMoreOnceClosed() {
    H2Ledger ledger = Nursery.open(directory);
    ledger.close();
    Measurement late = measured(LINE, stamp(1, 1, MONDAY), 1.5, 19);
    assertThrows(IllegalStateException.class, () -> ledger.append(late));
    assertThrows(IllegalStateException.class, () -> scan(ledger, LINE));
  }

  @Test
  void knowsNothingOfAPointThatNeverSpoke() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(Optional.empty(), ledger.latest(LINE));
      assertEquals(Optional.empty(), ledger.newest());
      assertEquals(List.of(), scan(ledger, LINE));
      assertEquals(List.of(), ledger.course(LINE, MONDAY, MONDAY.plusSeconds(60), 10).buckets());
    }
  }

  @Test
  void waitsRatherThanLosesWhenTheQueueIsFull() {
    StoreSettings small = new StoreSettings(directory, Duration.ofSeconds(60), 16);
    List<Measurement> kept = new ArrayList<>();
    try (H2Ledger ledger = Nursery.open(small)) {
      for (int i = 1; i <= 500; i++) {
        Measurement m = measured(LINE, stamp(1, i, MONDAY.plusSeconds(i)), i / 100.0, 19);
        ledger.append(m);
        kept.add(m);
      }
      assertEquals(kept, scan(ledger, LINE));
    }
  }
}
