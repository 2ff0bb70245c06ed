package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Printed tables of potassium chloride standards, each family by itself; mS/cm. */
class KclSolutionTest {

  /** NIST, CRC Handbook: Pratt et al., Pure Appl. Chem. 73:1783, 2001. */
  @ParameterizedTest
  @CsvSource({
    "MOLAL_0_01, 0, 0.77292", "MOLAL_0_01, 25, 1.40823", "MOLAL_0_01, 50, 2.12343",
    "MOLAL_0_1, 0, 7.11685", "MOLAL_0_1, 15, 10.4371", "MOLAL_0_1, 25, 12.8246",
    "MOLAL_0_1, 35, 15.3160", "MOLAL_0_1, 50, 19.1809", "MOLAL_1, 0, 63.488",
    "MOLAL_1, 10, 80.844", "MOLAL_1, 25, 108.620", "MOLAL_1, 40, 137.810"
  })
  void followsNistByTheKilogramOfWater(KclSolution standard, double celsius, double expected) {
    assertEquals(expected, at(standard, celsius), 1.2e-4 * expected);
  }

  /** A printed table of laboratory standards by the demal. */
  @ParameterizedTest
  @CsvSource({
    "DEMAL_0_01, 15, 1.1414", "DEMAL_0_01, 20, 1.2737", "DEMAL_0_01, 35, 1.6876",
    "DEMAL_0_1, 15, 10.455", "DEMAL_0_1, 18, 11.163", "DEMAL_0_1, 35, 15.353",
    "DEMAL_1, 15, 92.12", "DEMAL_1, 25, 111.31", "DEMAL_1, 35, 131.10"
  })
  void followsTheDemalTable(KclSolution standard, double celsius, double expected) {
    assertEquals(expected, at(standard, celsius), 1e-3 * expected);
  }

  /** A printed table of laboratory standards by the litre, three or four digits. */
  @ParameterizedTest
  @CsvSource({
    "MOLAR_0_01, 5, 0.896", "MOLAR_0_01, 10, 1.020", "MOLAR_0_01, 20, 1.278",
    "MOLAR_0_01, 25, 1.413", "MOLAR_0_01, 30, 1.552", "MOLAR_0_1, 5, 8.22",
    "MOLAR_0_1, 20, 11.67", "MOLAR_0_1, 35, 15.39"
  })
  void followsTheTableByTheLitre(KclSolution standard, double celsius, double expected) {
    assertEquals(expected, at(standard, celsius), 3e-3 * expected);
  }

  /** 0.01 mol/L is 0.010029 mol/kg at 25 °C, and so on: the families agree through the density. */
  @ParameterizedTest
  @CsvSource({"MOLAR_0_01, 0.010029", "MOLAR_0_02, 0.020064", "MOLAR_0_1, 0.10058"})
  void isWhatTheModelMakesOfTheSameSolution(KclSolution standard, double molality) {
    Solution solution =
        new ConductivityModel()
            .solution(Composition.of(Map.of(Ion.K, molality, Ion.CL, molality)), 25, Double.NaN);
    assertNotNull(solution);
    assertEquals(standard.at25(), solution.conductivity, 0.006 * standard.at25());
  }

  @Test
  void keepsTheFamiliesApart() {
    assertEquals(1.40823, at(KclSolution.MOLAL_0_01, 25), 1e-9);
    assertEquals(1.4083, at(KclSolution.DEMAL_0_01, 25), 1e-9);
    assertEquals(1.413, at(KclSolution.MOLAR_0_01, 25), 1e-9);
    assertEquals("0.01 mol/L", KclSolution.MOLAR_0_01.label());
  }

  @Test
  void doesNotExtrapolate() {
    KclSolution.OutOfRange cold =
        assertInstanceOf(KclSolution.OutOfRange.class, KclSolution.MOLAR_0_01.at(4));
    assertEquals(5, cold.minCelsius());
    assertInstanceOf(KclSolution.OutOfRange.class, KclSolution.MOLAL_1.at(50.1));
    assertInstanceOf(KclSolution.OutOfRange.class, KclSolution.DEMAL_1.at(Double.NaN));
    assertInstanceOf(Iso7888.OutOfRange.class, Iso7888.factor(36));
    assertInstanceOf(Iso7888.OutOfRange.class, Iso7888.factor(-0.1));
  }

  @Test
  void knowsWhatIso7888WasMadeFor() {
    Iso7888.Factor factor = assertInstanceOf(Iso7888.Factor.class, Iso7888.factor(10));
    assertEquals(1.428, factor.value(), 0.001);
    assertTrue(Iso7888.madeFor(0.46));
    assertFalse(Iso7888.madeFor(0.02));
    assertFalse(Iso7888.madeFor(12));
  }

  private static double at(KclSolution standard, double celsius) {
    return assertInstanceOf(KclSolution.Conductivity.class, standard.at(celsius))
        .milliSiemensPerCm();
  }
}
