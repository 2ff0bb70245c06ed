package feedwitness.app;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A long history leaves a small board whole: export and backup in a heap far smaller than it. */
@Timeout(120)
class SmallMemoryTest {
  private static final int READINGS = 300_000;
  private static final PointName LINE = new PointName("line");
  private static final Basis LINEAR =
      new Basis(
          Basis.RULES,
          "modbus-scaled",
          false,
          new CalibrationCurve.Identity(),
          new TemperatureCompensation.Linear(0.0188, 0.0006),
          InstrumentLimits.UNKNOWN);

  @TempDir Path folder;

  private void record() {
    LedgerOpening opening =
        H2Ledger.open(StoreSettings.in(folder.resolve("data")), TimeSource.system());
    long start = Instant.parse("2026-06-01T06:00:00Z").toEpochMilli();
    try (H2Ledger ledger = assertInstanceOf(LedgerOpening.Opened.class, opening).ledger()) {
      for (int i = 1; i <= READINGS; i++) {
        Reading reading =
            new Reading(
                1.5 + i % 100 / 1000.0,
                ConductivityUnit.MILLISIEMENS_PER_CM,
                20 + i % 7,
                TemperatureUnit.CELSIUS);
        Stamp stamp = new Stamp(1, i, i * 1_000_000_000L, start + i * 1_000L, i <= READINGS - 10);
        ledger.append(
            MeasurementChain.measure(
                new Indication(LINE, stamp, reading, Indication.Origin.PROBE), LINEAR));
      }
    }
  }

  private static void countRows(Path csv) throws IOException {
    try (Stream<String> lines = Files.lines(csv)) {
      assertEquals(READINGS + 1L, lines.count());
    }
  }

  @Test
  void exportsAndBacksUpALongHistoryInASmallHeap() throws Exception {
    record();
    String data = folder.resolve("data").toString();
    Path stopped = folder.resolve("stopped.csv");
    Process export =
        Cli.ownProcess("-Xmx48m", List.of("export", "--data", data, "-o", stopped.toString()))
            .start();
    try (BufferedReader said = export.inputReader(UTF_8)) {
      String words = String.join("\n", said.lines().toList());
      assertEquals(0, export.waitFor(), words);
      assertTrue(words.contains("10 of them have no time"), words);
    }
    countRows(stopped);
    Process service =
        Cli.ownProcess(
                "-Xmx48m",
                List.of("run", "--data", data, "--listen", "127.0.0.1:0", "--for", "100s"))
            .start();
    try (BufferedReader said = service.inputReader(UTF_8)) {
      for (String line = said.readLine();
          line != null && !line.startsWith("Stop with");
          line = said.readLine()) {
        // until it listens
      }
      Path running = folder.resolve("running.csv");
      Cli overHttp = Cli.run("export", "--data", data, "-o", running.toString());
      assertEquals(0, overHttp.code(), overHttp.err());
      assertEquals(-1, Files.mismatch(stopped, running), "the same octets");
      Path backup = folder.resolve("backup.zip");
      Cli made = Cli.run("backup", "--data", data, backup.toString());
      assertEquals(0, made.code(), made.err());
      Cli check = Cli.run("restore", "--check-only", backup.toString());
      assertEquals(0, check.code(), check.err());
      assertTrue(check.out().contains("300000 readings of line"), check.out());
    } finally {
      service.destroyForcibly().waitFor();
    }
  }
}
