package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * An earlier, independent program of the same equations, in another language: output of a model,
 * not measurements. That the two agree says that the equations were put down twice alike.
 */
class ReferenceVectorsTest {
  private static final double SHARE = 2e-4;
  private final ConductivityModel model = new ConductivityModel();

  @TestFactory
  List<DynamicTest> agreesWithAnIndependentProgram() {
    return Csv.resource("reference-vectors.csv").stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    "%s, %s °C, pH %s"
                        .formatted(row.text("case"), row.text("T_C"), row.text("pH_in")),
                    () -> compare(row)))
        .toList();
  }

  private void compare(Csv.Row row) {
    Map<Ion, Double> ions = new EnumMap<>(Ion.class);
    for (Ion ion : Ion.values()) {
      ions.put(ion, row.text(ion.symbol()).isEmpty() ? 0 : row.number(ion.symbol()));
    }
    double celsius = row.number("T_C");
    double pH = row.text("pH_in").isEmpty() ? Double.NaN : row.number("pH_in");
    Solution found = model.solution(Composition.of(ions), celsius, pH);
    assertNotNull(found);
    near(row, "kappa_hybrid_mS_cm", found.conductivity);
    near(row, "ionic_strength", found.dissolved.ionicStrength);
    near(row, "density_g_cm3", found.bulk.density());
    near(row, "eta_rel", found.bulk.relativeViscosity());
    near(row, "MgSO4_aq", found.dissolved.molality[model.indexOf("MgSO4")]);
    near(row, "CaSO4_aq", found.dissolved.molality[model.indexOf("CaSO4")]);
    near(row, "CaNO3", found.dissolved.molality[model.indexOf("CaNO3+")]);
    near(row, "HPO4", found.dissolved.molality[model.indexOf("HPO4-2")]);
    near(row, "lambda_K", found.lambda[model.indexOf("K+")]);
    near(row, "lambda_NO3", found.lambda[model.indexOf("NO3-")]);
    assertEquals(row.number("pH"), found.dissolved.pH, 2e-4);
  }

  private static void near(Csv.Row row, String column, double found) {
    double expected = row.number(column);
    assertEquals(expected, found, SHARE * Math.abs(expected) + 1e-9, column);
  }
}
