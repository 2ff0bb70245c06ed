package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** Held against published measurements; the sources are named in measured.csv. */
class AccuracyTest {
  private final ConductivityModel model = new ConductivityModel();
  private final List<MeasuredPoint> all = MeasuredPoint.all(model);
  private final Map<String, Accuracy> table = AccuracyTable.of(all);

  @Test
  void meetsTheFiguresAskedForAt25Degrees() {
    within("Salts at 25 °C, I 0–0.1", 0.5, 1.5);
    within("Salts at 25 °C, I 0.1–1", 0.5, 2.5);
    within("Salts at 25 °C, I 1–3", 1.5, 5);
  }

  @Test
  void meetsTheStandardsOfPotassiumChlorideFrom0To45Degrees() {
    within("NIST KCl 0.01 mol/kg, 0–45 °C", 0.4, 0.7);
    within("NIST KCl 0.1 mol/kg, 0–45 °C", 0.4, 0.7);
    within("NIST KCl 1 mol/kg, 0–45 °C", 0.3, 1.4);
  }

  @Test
  void foretellsMixturesItWasNotFittedTo() {
    within("NaCl + KCl at 25 °C, not in the fit, I 0–1.01", 0.8, 1.0);
    within("NaCl + KCl at 25 °C, not in the fit, I 1.01–3", 1.7, 1.7);
  }

  /**
   * PSS-78 gives the conductivity of sea water from the temperature and the practical salinity
   * (UNESCO Technical Papers in Marine Science 44, 1983): a mixture nothing was fitted to.
   */
  @Test
  void foretellsSeaWaterFrom0To35Degrees() {
    List<MeasuredPoint> sea = SeaWater.points(model);
    Accuracy accuracy = Accuracy.of(sea);
    assertTrue(accuracy.median() <= 0.9 && accuracy.p95() <= 1.6, accuracy::toString);
  }

  /** The document is what users read: it must say what the program does. */
  @Test
  void theDocumentShowsTheseFigures() throws IOException {
    String document = Files.readString(Path.of("docs/conductivity.md"));
    for (String row : AccuracyTable.rows(table)) {
      assertTrue(document.contains(row), () -> "docs/conductivity.md lacks: " + row);
    }
    String sea = Accuracy.of(SeaWater.points(model)).row(SeaWater.LABEL);
    assertTrue(document.contains(sea), () -> "docs/conductivity.md lacks: " + sea);
  }

  @Test
  void statesUncertaintiesThatCoverTheMeasurements() {
    covers("25 °C salts", p -> p.set().equals("A") || p.set().equals("C"), 0);
    covers("NIST KCl", p -> p.set().equals("N"), 0);
    covers("mixtures", p -> p.set().equals("M"), 0);
    // these measurements are themselves good to 2 to 5 %
    covers("20 °C salts", p -> p.set().equals("B"), 0.02);
  }

  private void covers(String name, Predicate<MeasuredPoint> which, double ofTheData) {
    List<MeasuredPoint> points = all.stream().filter(which).toList();
    double[] off =
        points.stream()
            .mapToDouble(
                p ->
                    Math.abs(p.calculated() - p.measured())
                        / Math.hypot(p.uncertainty(), ofTheData * p.measured()))
            .sorted()
            .toArray();
    long within = 0;
    for (double one : off) {
      within += one <= 2 ? 1 : 0;
    }
    double share = (double) within / off.length;
    double median = off[off.length / 2];
    assertTrue(share >= 0.95, name + ": only " + share + " within two standard uncertainties");
    assertTrue(median >= 0.15, name + ": uncertainty is far too wide, median " + median);
  }

  @Test
  void isLessSureOfFeedThanOfMeasuredSalts() {
    Composition chloride = Composition.of(Map.of(Ion.K, 1.0, Ion.CL, 1.0));
    Composition nitrate =
        Composition.of(Map.of(Ion.NH4, 0.5, Ion.K, 0.5, Ion.NO3, 0.8, Ion.PO4, 0.2));
    assertTrue(relative(nitrate) > 2.5 * relative(chloride));
    assertTrue(relative(nitrate) > 0.03, "the stock of nitrate and phosphate is not known to 3 %");
    assertTrue(relative(nitrate.times(0.02)) < 0.02);
  }

  private double relative(Composition composition) {
    Solution solution = model.solution(composition, 25, Double.NaN);
    assertNotNull(solution);
    return model.uncertainty(composition, solution) / solution.conductivity;
  }

  private void within(String label, double median, double p95) {
    Accuracy accuracy = table.get(label);
    assertNotNull(accuracy, label);
    assertTrue(accuracy.points() > 2, label);
    assertTrue(
        accuracy.median() <= median && accuracy.p95() <= p95,
        () -> accuracy.row(label) + " exceeds " + median + "/" + p95);
  }

  @Test
  void readsThePublishedCheckValueOfSeaWater() {
    assertEquals(42.914, SeaWater.conductivity(35, 15), 0.001);
  }
}
