package feedwitness.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.KclSolution;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bottles of Quarry End Nursery. */
class StandardShelfTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 6, 14);
  private static final StandardSolution LOW =
      bottle("low", KclSolution.MOLAR_0_01, "QE-A07", "2026-05-01", "2027-04-30");
  private static final StandardSolution MIDDLE =
      bottle("middle", KclSolution.MOLAR_0_02, "QE-C11", "2026-05-01", "2027-04-30");
  private static final StandardSolution HIGH =
      bottle("high", KclSolution.MOLAR_0_1, "QE-B03", "2026-05-01", "2027-04-30");
  private static final StandardShelf SHELF = new StandardShelf(List.of(HIGH, LOW, MIDDLE));

  private static StandardSolution bottle(
      String name, KclSolution solution, String lot, String opened, String expires) {
    return new StandardSolution(
        name,
        new StandardCourse.Kcl(solution),
        lot,
        1,
        Optional.of(LocalDate.parse(opened)),
        Optional.of(LocalDate.parse(expires)));
  }

  /** NIST, Pratt et al., Pure Appl. Chem. 73:1783, 2001, over all of 0 to 50 °C; mS/cm. */
  @ParameterizedTest
  @CsvSource({
    "MOLAL_0_01, 0, 0.77292",
    "MOLAL_0_01, 5, 0.89096",
    "MOLAL_0_01, 10, 1.01395",
    "MOLAL_0_01, 15, 1.14145",
    "MOLAL_0_01, 18, 1.21993",
    "MOLAL_0_01, 20, 1.27303",
    "MOLAL_0_01, 25, 1.40823",
    "MOLAL_0_01, 30, 1.54663",
    "MOLAL_0_01, 35, 1.68779",
    "MOLAL_0_01, 40, 1.83127",
    "MOLAL_0_01, 45, 1.97662",
    "MOLAL_0_01, 50, 2.12343",
    "MOLAL_0_1, 0, 7.11685",
    "MOLAL_0_1, 10, 9.29172",
    "MOLAL_0_1, 20, 11.6159",
    "MOLAL_0_1, 30, 14.0592",
    "MOLAL_0_1, 40, 16.5910",
    "MOLAL_0_1, 50, 19.1809",
    "MOLAL_1, 0, 63.488",
    "MOLAL_1, 10, 80.844",
    "MOLAL_1, 20, 99.170",
    "MOLAL_1, 30, 118.240",
    "MOLAL_1, 40, 137.810",
    "DEMAL_0_01, 15, 1.1414",
    "DEMAL_0_01, 20, 1.2737",
    "DEMAL_0_01, 35, 1.6876",
    "DEMAL_0_1, 15, 10.455",
    "DEMAL_0_1, 18, 11.163",
    "DEMAL_0_1, 35, 15.353",
    "DEMAL_1, 15, 92.12",
    "DEMAL_1, 35, 131.10",
    "MOLAR_0_1, 5, 8.22",
    "MOLAR_0_1, 10, 9.33",
    "MOLAR_0_1, 15, 10.48",
    "MOLAR_0_1, 20, 11.67",
    "MOLAR_0_1, 30, 14.12",
    "MOLAR_0_1, 35, 15.39",
    "MOLAR_0_01, 20, 1.278",
    "MOLAR_0_01, 25, 1.413",
    "MOLAR_0_01, 30, 1.552"
  })
  void reproducesPrintedTablesWithinATenthOfAPercent(
      KclSolution solution, double celsius, double printed) {
    assertEquals(printed, at(new StandardCourse.Kcl(solution), celsius), 1e-3 * printed);
  }

  /** Laboratory labels of 1413 µS/cm lie up to 0.27 % above NIST's course in the cold. */
  @ParameterizedTest
  @CsvSource({"5, 0.896", "10, 1.020", "15, 1.147"})
  void owesAColdLabelNoMoreThanItsUncertaintySays(double celsius, double printed) {
    StandardCourse.Conducts at = conducts(LOW.course(), celsius);
    assertEquals(printed, at.milliSiemensPerCm(), 2 * at.relativeStandardUncertainty() * printed);
  }

  @Test
  void knowsPotassiumChlorideFromZeroToFiftyAndNoFurther() {
    assertEquals(0, LOW.course().minCelsius());
    assertEquals(50, LOW.course().maxCelsius());
    assertTrue(
        conducts(LOW.course(), 2).relativeStandardUncertainty()
            > conducts(LOW.course(), 20).relativeStandardUncertainty());
    assertInstanceOf(StandardCourse.OutOfRange.class, LOW.course().at(-0.1));
    assertInstanceOf(StandardCourse.OutOfRange.class, LOW.course().at(50.1));
    assertInstanceOf(StandardCourse.OutOfRange.class, LOW.course().at(Double.NaN));
  }

  /** 0.1 mol/L given every 10 K is met in between within 0.1 %. */
  @ParameterizedTest
  @CsvSource({"15, 10.48", "20, 11.67", "25, 12.88", "30, 14.12"})
  void followsATableFromALabelBetweenItsRows(double celsius, double printed) {
    StandardCourse table =
        new StandardCourse.Table(
            "label",
            List.of(
                new StandardCourse.Row(10, 9.33),
                new StandardCourse.Row(22, 12.15),
                new StandardCourse.Row(35, 15.39)));
    assertEquals(printed, at(table, celsius), 1e-3 * printed);
    assertInstanceOf(StandardCourse.OutOfRange.class, table.at(9));
  }

  @Test
  void refusesATableWithASlip() {
    IllegalArgumentException slip =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                new StandardCourse.Table(
                    "label",
                    List.of(new StandardCourse.Row(20, 1278), new StandardCourse.Row(30, 1.552))));
    assertTrue(String.valueOf(slip.getMessage()).contains("500 mS/cm"), slip::getMessage);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new StandardCourse.Table(
                "label",
                List.of(new StandardCourse.Row(20, 1.552), new StandardCourse.Row(30, 1.278))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new StandardCourse.Table(
                "label",
                List.of(new StandardCourse.Row(10, 1.02), new StandardCourse.Row(20, 1.278))));
  }

  @Test
  void warnsOfOldBottlesAndOfDatesInTheFuture() {
    assertEquals(List.of(), LOW.warnings(TODAY));
    assertWarning(LOW.warnings(LocalDate.of(2027, 5, 3)), "expired on 2027-04-30, 3 days ago");
    assertWarning(LOW.warnings(LocalDate.of(2026, 11, 20)), "has been open for 203 days");
    assertWarning(LOW.warnings(LocalDate.of(2026, 4, 1)), "which is in the future");
  }

  private static void assertWarning(List<String> warnings, String words) {
    assertTrue(
        warnings.stream().anyMatch(w -> w.contains(words) && w.contains("QE-A07")),
        warnings::toString);
  }

  @Test
  void asksWhetherAnotherBottleIsMeant() {
    assertEquals(Optional.of(MIDDLE), SHELF.likelier(LOW, 2.55, 21));
    assertEquals(Optional.empty(), SHELF.likelier(LOW, 1.35, 21));
    assertEquals(Optional.empty(), SHELF.likelier(LOW, 6.0, 21));
  }

  @Test
  void findsTheTwoAroundTheFeed() {
    assertEquals(Optional.of(new StandardShelf.Pair(LOW, MIDDLE)), SHELF.around(1.5, 1.95));
    assertEquals(Optional.of(new StandardShelf.Pair(MIDDLE, HIGH)), SHELF.around(2.8, 3.5));
    assertEquals(Optional.empty(), SHELF.around(0.8, 1.95));
  }

  @Test
  void knowsStandardsByTheirLabels() {
    assertEquals(LOW.course(), StandardCourse.kcl("KCl 0.01 mol/L").orElseThrow());
    assertEquals(LOW.course(), StandardCourse.kcl("0.01mol/l").orElseThrow());
    assertEquals(Optional.empty(), StandardCourse.kcl("NaCl 0.01 mol/L"));
    assertEquals("KCl 0.01 mol/L, 1.413 mS/cm, lot QE-A07", LOW.title());
  }

  @Test
  void refusesTwoBottlesOfOneName() {
    assertThrows(IllegalArgumentException.class, () -> new StandardShelf(List.of(LOW, LOW)));
  }

  private static double at(StandardCourse course, double celsius) {
    return conducts(course, celsius).milliSiemensPerCm();
  }

  private static StandardCourse.Conducts conducts(StandardCourse course, double celsius) {
    return assertInstanceOf(StandardCourse.Conducts.class, course.at(celsius));
  }
}
