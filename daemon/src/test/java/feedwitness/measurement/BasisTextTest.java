package feedwitness.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import org.junit.jupiter.api.Test;

class BasisTextTest {
  /** As rules 1 wrote it. */
  private static final String OLD =
      "rules=1;profile=modbus-float;at25=false;calibration=linear,1.02,-0.01;"
          + "compensation=linear,0.0188,6.0E-4;limits=0.0,20.0,0.0,50.0,0.001,1.0,NaN";

  @Test
  void everyBasisOfTheGridSurvivesBeingWrittenDown() {
    for (Cases.Case each : Cases.all()) {
      assertEquals(each.basis(), Basis.parse(each.basis().toText()));
    }
  }

  @Test
  void readsWhatAnOlderProgramWrote() {
    Basis old = Basis.parse(OLD);
    assertEquals(1, old.rules());
    assertEquals(new CalibrationCurve.Linear(1.02, -0.01), old.calibration());
    assertTrue(Double.isNaN(old.limits().repeatabilityPercent()));
    assertEquals(old, Basis.parse(old.toText()));
  }

  /** 1.2 mS/cm at 15 °C: instrument 1 %, resolution 0.001, α ± 0.0006, no temperature, no noise. */
  @Test
  void makesNumbersOfAnOlderBasisByItsOwnRules() {
    Measurement measured = MeasurementChain.measure(Cases.indication(1.2, 15), Basis.parse(OLD));
    double factor = 1 / (1 - 0.188);
    double instrument = factor * 1.02 * 1.2 * 0.01 / Math.sqrt(3);
    double resolution = factor * 1.02 * 0.001 / Math.sqrt(12);
    double compensation = (1.02 * 1.2 - 0.01) * factor * 10 * 0.0006 * factor;
    double expected =
        Math.sqrt(instrument * instrument + resolution * resolution + compensation * compensation);
    assertEquals(expected, measured.standardUncertaintyMilliSiemensPerCm(), 1e-15);
  }

  @Test
  void refusesABasisOfANewerProgram() {
    String newer = OLD.replace("rules=1", "rules=" + (Basis.RULES + 1));
    assertThrows(IllegalArgumentException.class, () -> Basis.parse(newer));
  }

  @Test
  void refusesDamagedTexts() {
    for (String damaged :
        new String[] {
          OLD.replace(",NaN", ""),
          OLD.replace("linear,1.02,-0.01", "linear,1.02"),
          OLD.replace("linear,0.0188,6.0E-4", "fitted,x,1"),
          OLD.replace("compensation=linear", "compensation=guess"),
          OLD.replace("0.0188", "a lot"),
          "rules"
        }) {
      assertThrows(IllegalArgumentException.class, () -> Basis.parse(damaged), damaged);
    }
  }
}
