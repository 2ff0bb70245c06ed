package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever is dissolved, the model answers: with a number, or with the limit that is passed. */
class AnyMixtureTest {
  private static final int MIXTURES = 100_000;
  private final ConductivityModel model = new ConductivityModel();

  @Test
  void answersAHundredThousandRandomMixtures() {
    Random random = new Random(20_261);
    int predicted = 0;
    for (int i = 0; i < MIXTURES; i++) {
      Composition mixture = mixture(random);
      double celsius = 45 * random.nextDouble();
      ConductivityOutcome outcome =
          random.nextInt(4) == 0
              ? model.predict(mixture, celsius, 3 + 7 * random.nextDouble())
              : model.predict(mixture, celsius);
      if (outcome instanceof Predicted value) {
        predicted++;
        sound(mixture, celsius, value);
      } else {
        Refused refused = assertInstanceOf(Refused.class, outcome);
        assertTrue(
            refused.field().equals("ionic strength") || refused.field().equals("charge balance"),
            () -> refused.message() + " for " + mixture + " at " + celsius);
      }
    }
    assertTrue(predicted > MIXTURES / 2, "only " + predicted + " were within the limits");
  }

  /** From rain to stock; of one salt or all; two of three with their charges balanced. */
  private static Composition mixture(Random random) {
    double scale = Math.pow(10, -6 + 6.3 * random.nextDouble());
    double density = random.nextDouble();
    Map<Ion, Double> ions = new EnumMap<>(Ion.class);
    double charge = 0;
    for (Ion ion : Ion.values()) {
      if (random.nextDouble() < density) {
        double amount = scale * Math.pow(10, -3 * random.nextDouble());
        ions.put(ion, amount);
        charge += amount * (ion == Ion.PO4 || ion == Ion.CO3 ? -1 : ion.charge());
      }
    }
    if (random.nextInt(3) > 0) {
      ions.merge(charge > 0 ? Ion.NO3 : Ion.K, Math.abs(charge), Double::sum);
    }
    Composition mixture = Composition.of(ions);
    return random.nextInt(5) == 0
        ? mixture.with(NeutralSolute.UREA, scale * random.nextDouble())
        : mixture;
  }

  private static void sound(Composition mixture, double celsius, Predicted value) {
    boolean sound =
        value.conductivity() > 0
            && value.conductivity() < 1500
            && value.standardUncertainty() > 0
            && value.standardUncertainty() < value.conductivity() + 0.01
            && value.ionicStrength() > 0
            && value.ionicStrength() <= ConductivityModel.MAX_IONIC_STRENGTH
            && value.pH() > -2
            && value.pH() < 15
            && value.density() > 0.9
            && value.density() < 1.6
            && value.relativeViscosity() > 0.7;
    assertTrue(sound, () -> value + " for " + mixture + " at " + celsius);
  }

  @Test
  void keepsEveryBalance() {
    Random random = new Random(7);
    for (int i = 0; i < 2000; i++) {
      Composition mixture = mixture(random);
      double[] totals = SpeciationSolver.totals(mixture);
      Solution solution = model.solution(mixture, 45 * random.nextDouble(), Double.NaN);
      assertNotNull(solution);
      double[] found = model.totals(solution);
      for (Ion ion : Ion.values()) {
        double total = totals[ion.component()];
        assertEquals(total, found[ion.component()], 1e-9 * total + 1e-16, mixture::toString);
      }
      assertEquals(
          0, solution.dissolved.netCharge, 1e-9 * solution.dissolved.ionicStrength + 1e-14);
    }
  }

  @Test
  void conductsMoreWhenMoreIsDissolvedInDiluteFeed() {
    Composition feed =
        Composition.of(
            Map.of(Ion.K, 0.007, Ion.NH4, 0.001, Ion.CA, 0.004, Ion.NO3, 0.014, Ion.PO4, 0.002));
    double before = 0;
    for (double strength = 0.01; strength < 4; strength *= 1.3) {
      Predicted value = assertInstanceOf(Predicted.class, model.predict(feed.times(strength), 18));
      assertTrue(value.conductivity() > before);
      before = value.conductivity();
    }
  }

  @Test
  void pureWaterConductsAsItsOwnIonsDo() {
    // 0.0548 µS/cm at 25 °C: Marshall 1987, ultrapure water
    Predicted value = assertInstanceOf(Predicted.class, model.predict(Composition.WATER, 25));
    assertEquals(0.0548e-3, value.conductivity(), 0.001e-3);
  }
}
