package feedwitness.check;

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
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** A bench at Quarry End with a tank probe on it, for tests: keeps records and time. */
final class Bench {
  static final Instant SUNDAY = Instant.parse("2026-06-14T09:00:00Z");
  static final ZoneId ZONE = ZoneId.of("Europe/London");
  static final LocalDate TODAY = LocalDate.of(2026, 6, 14);
  static final CheckSubject TANK = CheckSubject.probe(new PointName("tank"));
  static final StandardSolution LOW = bottle("low", KclSolution.MOLAR_0_01, "QE-A07");
  static final StandardSolution MIDDLE = bottle("middle", KclSolution.MOLAR_0_02, "QE-C11");
  static final StandardSolution HIGH = bottle("high", KclSolution.MOLAR_0_1, "QE-B03");
  static final StandardShelf SHELF = new StandardShelf(List.of(LOW, MIDDLE, HIGH));
  static final Mark BEFORE = new Mark(1, 1000, SUNDAY.minusSeconds(1));

  final List<CheckEvidence> kept = new ArrayList<>();
  final Random random;

  /** Share of the truth that the probe shows, and what it adds, mS/cm. */
  double gain = 1;

  double offset;
  double celsius = 21.4;
  double noisePercent = 0.05;

  private Instant wall;
  private long seconds;
  private long sequence = 1000;

  Bench(long seed, Instant start) {
    random = new Random(seed);
    wall = start;
  }

  Bench() {
    this(8, SUNDAY);
  }

  private static StandardSolution bottle(String name, KclSolution solution, String lot) {
    return new StandardSolution(
        name,
        new StandardCourse.Kcl(solution),
        lot,
        1,
        Optional.of(LocalDate.of(2026, 5, 1)),
        Optional.of(LocalDate.of(2027, 4, 30)));
  }

  static Instrument instrument(CalibrationCurve curve, boolean at25, double percentPerKelvin) {
    return new Instrument(
        new Basis(
            Basis.RULES,
            "modbus-float",
            at25,
            curve,
            new TemperatureCompensation.Linear(0.0183, 0.0006),
            new InstrumentLimits(0, 20, 0, 60, 0.001, 1, 0.2)),
        percentPerKelvin);
  }

  static Instrument plain() {
    return instrument(new CalibrationCurve.Identity(), false, Double.NaN);
  }

  static CheckRequest request(Instrument instrument, String id) {
    return new CheckRequest(
        id,
        TANK,
        "the grower",
        SHELF,
        List.of("low", "middle"),
        3,
        instrument,
        1.5,
        1.95,
        1.52,
        Optional.of(BEFORE),
        TODAY,
        false);
  }

  When now() {
    return new When(seconds * 1_000_000_000L, wall);
  }

  void wait(Duration time) {
    wall = wall.plus(time);
    seconds += time.toSeconds();
  }

  Stamp stamp() {
    return new Stamp(1, ++sequence, seconds * 1_000_000_000L, wall.toEpochMilli(), true);
  }

  CheckSession begin(Instrument instrument) {
    return begin(request(instrument, "tank-1"));
  }

  CheckSession begin(CheckRequest request) {
    CheckRequest.Begun begun =
        assertInstanceOf(
            CheckRequest.Begun.class, request.begin(now(), CheckLimits.USUAL), "begins");
    kept.add(begun.evidence());
    return begun.session();
  }

  /** Does a step that must be accepted. */
  CheckReply keep(CheckReply reply) {
    assertTrue(reply.accepted(), reply::words);
    kept.addAll(reply.evidence());
    return reply;
  }

  /** What the probe indicates in a standard. */
  double indicates(StandardSolution standard) {
    StandardCourse.Conducts at =
        assertInstanceOf(StandardCourse.Conducts.class, standard.course().at(celsius));
    return gain * at.milliSiemensPerCm() + offset;
  }

  /** One look at all standards of the session. */
  CheckSession round(CheckSession session) {
    while (session.phase() == Phase.RINSE) {
      immerse(session);
      settle(session, session.standard().orElseThrow(), 400);
    }
    return session;
  }

  void immerse(CheckSession session) {
    keep(session.rinsed(now()));
    wait(Duration.ofSeconds(20));
    keep(session.immersed(now()));
  }

  /** Readings each second, from air to what the standard is, until the session has enough. */
  CheckReply settle(CheckSession session, StandardSolution standard, int most) {
    CheckReply reply = CheckReply.done("");
    for (int i = 0; i < most && session.phase() == Phase.SETTLING; i++) {
      wait(Duration.ofSeconds(1));
      double rest = indicates(standard);
      double value = rest * (1 - Math.exp(-i / 6.0));
      value *= 1 + noisePercent / 100 * random.nextGaussian();
      double seen = Math.round(value * 1000) / 1000.0;
      reply = keep(session.reading(new ProbeReading(stamp(), seen, celsius)));
    }
    return reply;
  }
}
