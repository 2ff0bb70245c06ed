package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.PointName;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.StringLength;

/** Every fact survives being written as text fields, whatever is in it. */
class CheckEvidencePropertiesTest {

  @Property(tries = 300)
  void everyRecordIsReadAsItWasWritten(
      @ForAll long seed, @ForAll @StringLength(max = 60) String words) {
    for (CheckEvidence record : all(new Random(seed), words)) {
      assertEquals(Optional.of(record), CheckEvidence.read(record.kind(), record.toFields()));
    }
  }

  /** Kind, subject, author and fields have the shape that the ledger takes. */
  @Property(tries = 100)
  void everyRecordCanBePutOnRecord(
      @ForAll long seed, @ForAll @StringLength(max = 80) String words) {
    for (CheckEvidence record : all(new Random(seed), words)) {
      EvidenceDraft draft =
          new EvidenceDraft(
              record.kind(),
              record.subject().toText(),
              record.author(),
              new TreeMap<>(record.toFields()),
              Optional.empty());
      assertEquals(Optional.of(record), CheckEvidence.read(draft.kind(), draft.fields()));
    }
  }

  @Property(tries = 50)
  void aRecordOfANewerProgramIsRefusedNotGuessedAt(@ForAll long seed) {
    for (CheckEvidence record : all(new Random(seed), "")) {
      Map<String, String> newer = new HashMap<>(record.toFields());
      newer.put("v", "2");
      IllegalArgumentException said =
          assertThrows(
              IllegalArgumentException.class, () -> CheckEvidence.read(record.kind(), newer));
      assertTrue(String.valueOf(said.getMessage()).contains("version 2 is newer"));
    }
  }

  @Property(tries = 300)
  void aDamagedFieldIsSaidNotThrownOtherwise(
      @ForAll long seed, @ForAll @StringLength(max = 12) String junk) {
    Random random = new Random(seed);
    for (CheckEvidence record : all(random, "x")) {
      Map<String, String> damaged = new HashMap<>(record.toFields());
      List<String> keys = damaged.keySet().stream().sorted().toList();
      String key = keys.get(random.nextInt(keys.size()));
      if (random.nextBoolean()) {
        damaged.remove(key);
      } else {
        damaged.put(key, junk);
      }
      try {
        CheckEvidence.read(record.kind(), damaged);
      } catch (IllegalArgumentException expected) {
        assertTrue(String.valueOf(expected.getMessage()).contains(record.kind()));
      }
    }
  }

  @Property(tries = 50)
  void whatIsNoneOfOursIsLeftAlone(@ForAll @StringLength(max = 20) String kind) {
    assertEquals(Optional.empty(), CheckEvidence.read("x-" + kind, Map.of()));
  }

  private static List<CheckEvidence> all(Random random, String words) {
    return List.of(
        new CheckStarted(
            entry(random, words),
            List.of("low", "middle"),
            List.of(words, "KCl"),
            number(random),
            random.nextBoolean() ? Double.NaN : number(random),
            basis(random),
            random.nextBoolean() ? Double.NaN : number(random),
            random.nextBoolean() ? Optional.empty() : Optional.of(mark(random)),
            random.nextBoolean() ? List.of() : List.of(words, words)),
        new StandardMeasured(entry(random, words), pick(random, Round.values()), result(random)),
        new ProbeCleaned(entry(random, words), words, Optional.of(mark(random))),
        new CurveAdjusted(
            entry(random, words),
            "tank-a1",
            pick(random, CurveAdjusted.Method.values()),
            curve(random),
            curve(random),
            words,
            words,
            Optional.empty()),
        new CheckClosed(
            entry(random, words),
            pick(random, CheckClosed.Ending.values()),
            pick(random, Verdict.values()),
            words),
        new CheckNoted(entry(random, words), words),
        new ProbeReturned(
            entry(random, words),
            pick(random, ProbeReturned.How.values()),
            Optional.of(mark(random)),
            Optional.empty(),
            words),
        new ProbeReplaced(entry(random, words), words, Optional.of(mark(random))),
        new ProbeOutOfPlace(
            entry(random, words), mark(random), mark(random), random.nextBoolean(), words),
        new ComparisonMade(
            entry(random, words),
            pick(random, ComparisonMade.Type.values()),
            words,
            number(random),
            number(random),
            number(random),
            number(random),
            number(random),
            words),
        new RangeQualified(
            entry(random, words),
            mark(random),
            mark(random),
            pick(random, RangeQualified.Shape.values()),
            errors(random),
            errors(random),
            words));
  }

  private static <T> T pick(Random random, T[] from) {
    return from[random.nextInt(from.length)];
  }

  private static double number(Random random) {
    return Math.exp(20 * random.nextGaussian());
  }

  private static Entry entry(Random random, String words) {
    PointName name = new PointName("tank-" + random.nextInt(100));
    CheckSubject subject =
        random.nextBoolean() ? CheckSubject.probe(name) : CheckSubject.meter(name);
    return new Entry(words, subject, instant(random), words);
  }

  private static Instant instant(Random random) {
    return Instant.ofEpochSecond(random.nextInt(), random.nextInt(1_000_000_000));
  }

  private static Mark mark(Random random) {
    return new Mark(random.nextInt(1000), random.nextInt(1 << 30), instant(random));
  }

  private static CalibrationCurve curve(Random random) {
    return random.nextBoolean()
        ? new CalibrationCurve.Identity()
        : new CalibrationCurve.Linear(
            number(random),
            random.nextGaussian(),
            number(random),
            number(random),
            2 * random.nextDouble() - 1);
  }

  private static Errors errors(Random random) {
    return new Errors(
        List.of(
            new Errors.Node(number(random), random.nextGaussian(), number(random)),
            new Errors.Node(number(random), random.nextGaussian(), number(random))));
  }

  private static StandardResult result(Random random) {
    return new StandardResult(
        "low",
        "KCl 0.01 mol/L",
        number(random),
        number(random),
        random.nextGaussian(),
        random.nextGaussian(),
        random.nextGaussian(),
        random.nextInt(100),
        List.of(
            new Doubt(pick(random, Doubt.Source.values()), number(random), random.nextBoolean()),
            new Doubt(Doubt.Source.RINSE, Double.NaN, true)),
        number(random));
  }

  private static Basis basis(Random random) {
    return new Basis(
        Basis.RULES,
        "modbus-float",
        random.nextBoolean(),
        curve(random),
        new TemperatureCompensation.NaturalWater(),
        new InstrumentLimits(0, 20, Double.NaN, 60, number(random), 1, 0.2));
  }
}
