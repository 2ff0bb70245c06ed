package feedwitness.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import org.junit.jupiter.api.Test;

class MeasurementChainTest {
  private static final InstrumentLimits PROBE = new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3);

  @Test
  void refersFeedTo25DegreesLinearly() {
    Measurement measured = measure(1.2, 15, linear(0.0188));
    assertEquals(1.2 / (1 - 0.188), measured.conductivity25MilliSiemensPerCm(), 1e-12);
    assertTrue(measured.flags().isEmpty());
  }

  @Test
  void takesAnAlreadyCompensatedIndicationAsItIs() {
    Basis basis = new Basis(1, "p", true, identity(), linear(0.0188), PROBE);
    Measurement measured = MeasurementChain.measure(indication(1.5, 12), basis);
    assertEquals(1.5, measured.conductivity25MilliSiemensPerCm());
  }

  @Test
  void calibratesBeforeItCompensates() {
    Basis basis =
        new Basis(1, "p", false, new CalibrationCurve.Linear(1.02, 0.01), linear(0.02), PROBE);
    Measurement measured = MeasurementChain.measure(indication(1, 30), basis);
    assertEquals(1.03, measured.conductivityMilliSiemensPerCm(), 1e-12);
    assertEquals(1.03 / 1.1, measured.conductivity25MilliSiemensPerCm(), 1e-12);
  }

  @Test
  void neverAltersWhatTheInstrumentSaid() {
    Indication indication = indication(1.234, 19.5);
    assertSame(
        indication,
        MeasurementChain.measure(
                indication, new Basis(1, "p", false, identity(), linear(0.02), PROBE))
            .sample());
  }

  @Test
  void saysWhenThereIsNoTemperatureToCompensateWith() {
    Measurement measured = measure(1.2, Double.NaN, linear(0.0188));
    assertTrue(Double.isNaN(measured.conductivity25MilliSiemensPerCm()));
    assertTrue(measured.flags().has(QualityFlag.TEMPERATURE_MISSING));
  }

  @Test
  void doesNotExtrapolateIso7888() {
    Measurement measured = measure(0.5, 41, new TemperatureCompensation.NaturalWater());
    assertTrue(Double.isNaN(measured.conductivity25MilliSiemensPerCm()));
    assertTrue(measured.flags().has(QualityFlag.TEMPERATURE_OUTSIDE_COMPENSATION));
  }

  @Test
  void flagsADeadBusAndImpossibleTemperatures() {
    assertTrue(measure(0, 0, linear(0.02)).flags().has(QualityFlag.BOTH_ZERO));
    assertTrue(measure(1, -127, linear(0.02)).flags().has(QualityFlag.TEMPERATURE_IMPOSSIBLE));
    assertTrue(measure(1, 85, linear(0.02)).flags().has(QualityFlag.TEMPERATURE_IMPOSSIBLE));
  }

  @Test
  void keepsAReadingOutsideTheRatedRangeAndFlagsIt() {
    Measurement measured = measure(23, 25, linear(0.02));
    assertEquals(23, measured.conductivity25MilliSiemensPerCm(), 1e-12);
    assertTrue(measured.flags().has(QualityFlag.RANGE));
  }

  @Test
  void aMissingSampleHasNoNumbers() {
    Measurement measured =
        MeasurementChain.measure(
            new Missing(new PointName("line"), stamp(), Missing.Cause.SILENT, "no answer"),
            new Basis(1, "p", false, identity(), linear(0.02), PROBE));
    assertTrue(Double.isNaN(measured.conductivityMilliSiemensPerCm()));
    assertTrue(measured.flags().has(QualityFlag.MISSING));
  }

  @Test
  void uncertaintyGrowsWithTheDistanceFrom25Degrees() {
    double near = measure(1.5, 24, linear(0.0188)).standardUncertaintyMilliSiemensPerCm();
    double far = measure(1.5, 8, linear(0.0188)).standardUncertaintyMilliSiemensPerCm();
    assertTrue(near > 0.008 && far > 1.3 * near, near + " and " + far);
  }

  @Test
  void uncertaintyIsUnknownWhereTheInstrumentsAccuracyIs() {
    Basis basis = new Basis(1, "typed", true, identity(), linear(0.02), InstrumentLimits.UNKNOWN);
    assertTrue(
        Double.isNaN(
            MeasurementChain.measure(indication(1.5, 20), basis)
                .standardUncertaintyMilliSiemensPerCm()));
  }

  @Test
  void aBasisSurvivesBeingWrittenDown() {
    for (TemperatureCompensation each :
        new TemperatureCompensation[] {
          linear(0.0188),
          new TemperatureCompensation.NaturalWater(),
          new TemperatureCompensation.Kcl(),
          new TemperatureCompensation.None()
        }) {
      Basis basis =
          new Basis(
              1,
              "modbus-float",
              false,
              new CalibrationCurve.Linear(1.0 / 3, -0.1),
              each,
              InstrumentLimits.UNKNOWN);
      assertEquals(basis, Basis.parse(basis.toText()));
    }
  }

  @Test
  void refusesABasisOfANewerProgram() {
    String text =
        new Basis(1, "p", false, identity(), linear(0.02), PROBE)
            .toText()
            .replace("rules=1", "rules=9");
    assertThrows(IllegalArgumentException.class, () -> Basis.parse(text));
    assertFalse(text.isEmpty());
  }

  private static Measurement measure(
      double milliSiemensPerCm, double celsius, TemperatureCompensation compensation) {
    return MeasurementChain.measure(
        indication(milliSiemensPerCm, celsius),
        new Basis(1, "p", false, identity(), compensation, PROBE));
  }

  private static TemperatureCompensation linear(double alpha) {
    return new TemperatureCompensation.Linear(alpha, 0.0006);
  }

  private static CalibrationCurve identity() {
    return new CalibrationCurve.Identity();
  }

  private static Stamp stamp() {
    return new Stamp(1, 1, 0, 0, true);
  }

  private static Indication indication(double milliSiemensPerCm, double celsius) {
    return new Indication(
        new PointName("line"),
        stamp(),
        new Reading(
            milliSiemensPerCm,
            ConductivityUnit.MILLISIEMENS_PER_CM,
            celsius,
            TemperatureUnit.CELSIUS),
        Indication.Origin.PROBE);
  }
}
