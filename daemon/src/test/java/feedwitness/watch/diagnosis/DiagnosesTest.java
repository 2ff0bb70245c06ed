package feedwitness.watch.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.watch.diagnosis.Evidence.Check;
import feedwitness.watch.diagnosis.Evidence.Second;
import org.junit.jupiter.api.Test;

/** The table of signatures. */
class DiagnosesTest {
  private static final double UNKNOWN = Double.NaN;
  private static final Evidence SAG =
      new Evidence(
          -12,
          true,
          false,
          true,
          0,
          UNKNOWN,
          false,
          UNKNOWN,
          false,
          false,
          Check.NONE,
          Second.NONE);

  private static Cause first(Evidence evidence) {
    return Diagnoses.of(evidence).causes().get(0).cause();
  }

  @Test
  void withoutASecondProbeOrACheckInjectorAndFoulingCannotBeToldApart() {
    Diagnosis diagnosis = Diagnoses.of(SAG);
    assertTrue(diagnosis.ambiguous());
    assertEquals(Cause.INJECTOR, diagnosis.causes().get(0).cause());
    assertEquals(Cause.PROBE_FOULED, diagnosis.causes().get(1).cause());
    assertEquals(3, diagnosis.tests().size());
    assertTrue(diagnosis.tests().get(0).contains("handheld"));
    assertTrue(diagnosis.tests().get(1).contains("standard"));
    assertTrue(diagnosis.tests().get(2).contains("stock is drawn"));
  }

  @Test
  void aFailedCheckPointsToTheProbe() {
    assertEquals(Cause.PROBE_FOULED, first(SAG.with(Check.FAILED)));
    assertFalse(Diagnoses.of(SAG.with(Check.FAILED)).ambiguous());
  }

  @Test
  void aPassedCheckOrASecondProbeThatAgreesPointsToTheInjector() {
    assertEquals(Cause.INJECTOR, first(SAG.with(Check.PASSED)));
    assertFalse(Diagnoses.of(SAG.with(Check.PASSED)).ambiguous());
    assertEquals(Cause.INJECTOR, first(SAG.with(Second.AGREES)));
    assertEquals(Cause.PROBE_FOULED, first(SAG.with(Second.DISAGREES)));
  }

  @Test
  void plainWaterIsAFreeCheckOfTheProbe() {
    assertEquals(Cause.PROBE_FOULED, first(with(SAG, -12, -6, false, false)));
    assertEquals(Cause.INJECTOR, first(with(SAG, -12, 0.3, false, false)));
  }

  @Test
  void aChangeWithAFreshBarrelPointsToTheStock() {
    assertEquals(Cause.STOCK_STRENGTH, first(with(SAG, -12, UNKNOWN, true, false)));
  }

  @Test
  void mostOfTheFeedMissingIsNotWear() {
    assertFalse(first(with(SAG, -70, UNKNOWN, false, false)) == Cause.INJECTOR);
  }

  @Test
  void airBeforePlainWaterIsAnEmptyBarrel() {
    Evidence plain =
        new Evidence(
            -100,
            false,
            true,
            true,
            0,
            UNKNOWN,
            true,
            UNKNOWN,
            false,
            false,
            Check.NONE,
            Second.NONE);
    assertEquals(Cause.STOCK_EMPTY, first(plain));
    assertFalse(Diagnoses.of(plain).ambiguous());
  }

  @Test
  void lineAndSourcePartingInTemperatureIsTheSensor() {
    Evidence parted =
        new Evidence(
            -12, false, false, true, 0, UNKNOWN, false, 9, false, false, Check.NONE, Second.NONE);
    assertEquals(Cause.TEMPERATURE_SENSOR, first(parted));
  }

  private static Evidence with(
      Evidence e, double size, double plainShift, boolean sinceFill, boolean learnt) {
    return new Evidence(
        size,
        e.gradual(),
        e.plain(),
        e.sourceKnown(),
        e.sourceShiftPercent(),
        plainShift,
        e.air(),
        e.temperatureShiftKelvin(),
        sinceFill,
        learnt,
        e.check(),
        e.second());
  }
}
