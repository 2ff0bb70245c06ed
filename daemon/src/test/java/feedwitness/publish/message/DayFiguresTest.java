package feedwitness.publish.message;

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
import feedwitness.site.Urgency;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The day's figures of the "still watching" note, from a real store. */
class DayFiguresTest {
  private static final PointName LINE = new PointName("line");
  private static final ZoneId LONDON = ZoneId.of("Europe/London");
  private static final LocalDate MONDAY = LocalDate.of(2026, 6, 1);
  private static final Basis BASIS =
      new Basis(
          Basis.RULES,
          "line-push",
          false,
          new CalibrationCurve.Identity(),
          new TemperatureCompensation.Linear(0.0188, 0.0006),
          InstrumentLimits.UNKNOWN);

  @TempDir Path folder;

  private H2Ledger ledger() {
    LedgerOpening opening =
        H2Ledger.open(new StoreSettings(folder, Duration.ofSeconds(1), 1024), TimeSource.system());
    return assertInstanceOf(LedgerOpening.Opened.class, opening, opening::toString).ledger();
  }

  private static void measure(H2Ledger ledger, int sequence, Instant at, double mS) {
    ledger.append(
        MeasurementChain.measure(
            new Indication(
                LINE,
                new Stamp(ledger.boot(), sequence, sequence * 1_000_000L, at.toEpochMilli(), true),
                new Reading(mS, ConductivityUnit.MILLISIEMENS_PER_CM, 25, TemperatureUnit.CELSIUS),
                Indication.Origin.PROBE),
            BASIS));
  }

  @Test
  void aDayWithTwoSilencesIsToldAsOne() throws Exception {
    Instant midnight = MONDAY.atStartOfDay(LONDON).toInstant();
    try (H2Ledger ledger = ledger()) {
      int sequence = 1;
      for (int minute = 0; minute < 24 * 60; minute++) {
        boolean silent = minute < 30 || (minute >= 600 && minute < 700);
        if (!silent) {
          measure(
              ledger,
              sequence++,
              midnight.plusSeconds(60L * minute),
              minute == 900 ? 1.9 : minute == 901 ? 1.1 : 1.5);
        }
      }
      ledger
          .append(
              new Stamp(
                  ledger.boot(), sequence, 0, midnight.plusSeconds(3600).toEpochMilli(), true),
              Records.notice(
                  Bench.notice("1-1-1", Urgency.MEDIUM, Notice.Change.RAISED), List.of("mail")))
          .get(30, TimeUnit.SECONDS);
      assertTrue(ledger.sync(Duration.ofSeconds(30)));
      feedwitness.site.Site site = DaySite.withLine(LONDON);
      DayFigures day = new Almanac(ledger, ledger, site).of(MONDAY).get(0);
      assertEquals(1310, day.readings());
      assertEquals(1.5, day.mean(), 1e-6);
      assertEquals(1.1, day.low(), 1e-6);
      assertEquals(1.9, day.high(), 1e-6);
      assertEquals(2, day.gaps());
      assertTrue(Math.abs(day.silent().toMinutes() - 130) <= 3, day.silent()::toString);
      assertEquals(1, day.alarms());
      String note = new LetterText("Quarry End Nursery", LONDON).daily(MONDAY, List.of(day));
      assertTrue(note.contains("mean 1.50, low 1.10, high 1.90; 2 gaps, 2 h"), note);
      assertTrue(note.contains("Glasshouse line") && note.contains("1 alarm"), note);
      DayFigures empty = new Almanac(ledger, ledger, site).of(MONDAY.plusDays(1)).get(0);
      assertEquals(0, empty.readings());
      assertTrue(
          new LetterText("Quarry End Nursery", LONDON)
              .daily(MONDAY, List.of(empty))
              .contains("no reading; 1 gap, 24 h 00 min without readings; no alarms"));
    }
  }
}
