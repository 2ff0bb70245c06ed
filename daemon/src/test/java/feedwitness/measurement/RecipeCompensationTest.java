package feedwitness.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.measurement.TemperatureCompensation.Fitted;
import feedwitness.measurement.TemperatureCompensation.Outcome;
import feedwitness.solution.Composition;
import feedwitness.solution.ConductivityModel;
import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.Ion;
import feedwitness.solution.TemperatureCourse;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A reading referred to 25 °C by what is dissolved. */
class RecipeCompensationTest {
  private static final Composition FEED =
      Composition.of(
          Map.of(Ion.K, 0.0056, Ion.NH4, 0.0012, Ion.CA, 0.003, Ion.NO3, 0.0118, Ion.PO4, 0.001));

  private final ConductivityModel model = new ConductivityModel();

  private Fitted compensation() {
    return Fitted.of("growing-on", TemperatureCourse.of(model, FEED).value().orElseThrow());
  }

  private double conductivity(double celsius) {
    return assertInstanceOf(Predicted.class, model.predict(FEED, celsius)).conductivity();
  }

  @Test
  void bringsTheSameFeedToTheSameStrengthAtEveryTemperature() {
    for (double celsius = 0; celsius <= 45; celsius += 5) {
      Outcome.Factor factor = assertInstanceOf(Outcome.Factor.class, compensation().at(celsius));
      double at25 = conductivity(25);
      assertEquals(at25, factor.value() * conductivity(celsius), 5e-4 * at25);
    }
  }

  @Test
  void endsWhereTheModelEnds() {
    assertInstanceOf(Outcome.OutOfRange.class, compensation().at(45.1));
    assertInstanceOf(Outcome.OutOfRange.class, compensation().at(-0.1));
  }

  @Test
  void isTheLessSureTheFartherFrom25Degrees() {
    assertEquals(0, compensation().relativeStandardUncertainty(25));
    assertEquals(0.006, compensation().relativeStandardUncertainty(10), 0.001);
  }
}
