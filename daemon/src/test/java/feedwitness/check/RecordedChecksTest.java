package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardCourse;
import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.solution.KclSolution;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Five low-cost probes in two check standards, as somebody recorded them before adjusting (see
 * SOURCES.md beside the recording), through settling, verdict and adjustment.
 */
class RecordedChecksTest {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");
  private static final StandardSolution LOW = standard("low", 12.88, KclSolution.MOLAL_0_1);
  private static final StandardSolution HIGH = standard("high", 80, KclSolution.MOLAL_1);

  private static List<ProbeReading> readings(String probe, String standard) throws IOException {
    List<ProbeReading> readings = new ArrayList<>();
    for (String line :
        Files.readAllLines(Path.of("src/test/resources/recordings/standard_checks_excerpt.csv"))) {
      String[] cells = line.split(",", -1);
      if (cells[0].equals(probe) && cells[3].equals(standard)) {
        long seconds = LocalDateTime.parse(cells[2], TIME).toEpochSecond(ZoneOffset.UTC);
        readings.add(
            new ProbeReading(
                new Stamp(1, readings.size() + 1, seconds * 1_000_000_000L, seconds * 1000, true),
                Double.parseDouble(cells[5]) / 1000,
                Double.parseDouble(cells[4])));
      }
    }
    return readings;
  }

  /** The course of potassium chloride of about that strength, as a label would print it. */
  private static StandardSolution standard(String name, double at25, KclSolution like) {
    List<StandardCourse.Row> rows = new ArrayList<>();
    for (int celsius = 15; celsius <= 35; celsius += 5) {
      if (like.at(celsius) instanceof KclSolution.Conductivity it) {
        rows.add(new StandardCourse.Row(celsius, at25 * it.milliSiemensPerCm() / like.at25()));
      }
    }
    return new StandardSolution(
        name,
        new StandardCourse.Table("check standard", rows),
        "",
        1,
        Optional.empty(),
        Optional.empty());
  }

  private static CheckSession session(String probe, When now) {
    Instrument instrument =
        new Instrument(
            new Basis(
                Basis.RULES,
                "recorded",
                false,
                new CalibrationCurve.Identity(),
                new TemperatureCompensation.Kcl(),
                new InstrumentLimits(0, 200, Double.NaN, Double.NaN, 0.01, Double.NaN, Double.NaN)),
            Double.NaN);
    CheckRequest request =
        new CheckRequest(
            probe + "-1",
            CheckSubject.probe(new PointName(probe)),
            "the grower",
            new StandardShelf(List.of(LOW, HIGH)),
            List.of("low", "high"),
            3,
            instrument,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Optional.empty(),
            LocalDate.of(2025, 4, 24),
            false);
    return assertInstanceOf(CheckRequest.Begun.class, request.begin(now, CheckLimits.USUAL))
        .session();
  }

  /** Immerses and gives the readings of one standard; how many it took, or 0 if never at rest. */
  private static int play(CheckSession session, List<ProbeReading> readings) {
    When now = new When(readings.get(0).stamp().monotonicNanos(), readings.get(0).stamp().wall());
    session.rinsed(now);
    session.immersed(now);
    int taken = 0;
    for (ProbeReading reading : readings) {
      taken++;
      session.reading(reading);
      if (session.phase() != Phase.SETTLING) {
        return taken;
      }
    }
    return 0;
  }

  /** Readings came every 20 s; 0 stands for never at rest while recorded. */
  @ParameterizedTest
  @CsvSource({
    "probe_1, 13, 13, 28.3, 31.9",
    "probe_2, 11, 0, 20.4, 0",
    "probe_3, 10, 0, 16.3, 0",
    "probe_4, 12, 0, 11.6, 0",
    "probe_5, 12, 13, 30.8, 26.7"
  })
  void findsWhatTheProbesWereOffBy(
      String probe, int lowAfter, int highAfter, double lowPercent, double highPercent)
      throws IOException {
    List<ProbeReading> low = readings(probe, "12880");
    CheckSession session = session(probe, new When(0, low.get(0).stamp().wall()));
    assertEquals(lowAfter, play(session, low));
    assertEquals(highAfter, play(session, readings(probe, "80000")));
    List<StandardResult> results = session.last(Round.AS_FOUND);
    assertEquals(lowPercent, results.get(0).errorPercent(), 0.05);
    if (highAfter > 0) {
      assertEquals(highPercent, results.get(1).errorPercent(), 0.05);
      assertEquals(Verdict.FAIL, session.verdict());
    } else {
      assertEquals(Phase.SETTLING, session.phase());
      assertTrue(session.settlingWords().startsWith("still moving"), session::settlingWords);
    }
    for (StandardResult result : results) {
      assertEquals(Verdict.FAIL, result.verdict());
      assertTrue(result.expandedPercent() > 1 && result.expandedPercent() < 2.1);
    }
  }

  /** 28 % high in one standard and 32 % in the other: no one factor puts it right. */
  @Test
  void needsTwoPointsAndRefusesWhatIsTooFarOff() throws IOException {
    List<ProbeReading> low = readings("probe_1", "12880");
    CheckSession session = session("probe_1", new When(0, low.get(0).stamp().wall()));
    play(session, low);
    play(session, readings("probe_1", "80000"));
    List<StandardResult> results = session.last(Round.AS_FOUND);
    double apart = results.get(1).errorPercent() - results.get(0).errorPercent();
    assertTrue(apart > results.get(0).expandedPercent(), "in proportion after all");
    AdjustmentSum.Refused refused =
        assertInstanceOf(
            AdjustmentSum.Refused.class, AdjustmentSum.of(session.instrument(), results));
    assertTrue(refused.words().contains("128.3 %"), refused::words);
  }

  @Test
  void putsAProbeRightThatIsLessFarOff() throws IOException {
    List<ProbeReading> low = readings("probe_4", "12880");
    CheckSession session = session("probe_4", new When(0, low.get(0).stamp().wall()));
    play(session, low);
    AdjustmentSum.Proposed proposed =
        assertInstanceOf(
            AdjustmentSum.Proposed.class,
            AdjustmentSum.of(session.instrument(), session.last(Round.AS_FOUND)));
    assertEquals(1 / 1.1157, proposed.curve().slope(), 1e-4);
  }

  /** In air they say 0, to the digit: that is at rest as well. */
  @Test
  void comesToRestInAir() throws IOException {
    Settling settling = Settling.begin(0.01, 0.5);
    for (ProbeReading reading : readings("probe_1", "0")) {
      settling =
          settling.with(
              new Settling.Reading(reading.seconds(), reading.milliSiemensPerCm(), Double.NaN));
    }
    assertEquals(0, assertInstanceOf(Settling.Settled.class, settling.state()).mean(), 1e-12);
  }
}
