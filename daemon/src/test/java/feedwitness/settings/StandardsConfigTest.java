package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.calibration.StandardSolution;
import feedwitness.quantity.PointName;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bottles on the shelf, tolerances and intervals, as they are written down. */
class StandardsConfigTest {
  @TempDir private Path folder;
  private Desk desk;

  @BeforeEach
  void sit() {
    desk = new Desk(folder);
  }

  private CheckRules checks(String text) {
    return desk.right(Desk.NURSERY + text).config().checks();
  }

  private void fault(String text, String place, String... words) {
    desk.fault(Desk.NURSERY + text, place, words);
  }

  @Test
  void putsBottlesOnTheShelf() {
    StandardSolution low =
        checks(
                """
                [[standard]]
                name = "low"
                solution = "KCl 0.01 mol/L"
                lot = "QE-A07"
                certificate-percent = 0.5
                opened = 2026-05-01
                expires = "2027-04-30"
                """)
            .shelf()
            .find("low")
            .orElseThrow();
    assertEquals(1.413, low.nominal(), 1e-9);
    assertEquals("KCl 0.01 mol/L, 1.413 mS/cm, lot QE-A07", low.title());
    assertEquals(0.5, low.certificatePercent());
    assertEquals(Optional.of(LocalDate.of(2026, 5, 1)), low.opened());
    assertEquals(Optional.of(LocalDate.of(2027, 4, 30)), low.expires());
  }

  @Test
  void takesATableFromTheLabel() {
    StandardSolution own =
        checks(
                """
                [[standard]]
                name = "own"
                solution = "well water standard"
                table = ["20 °C: 451.5 µS/cm", "25 C = 500 uS/cm", "30°C: 0.5485 mS/cm"]
                """)
            .shelf()
            .find("own")
            .orElseThrow();
    assertEquals(0.5, own.nominal(), 1e-9);
    assertEquals(30, own.course().maxCelsius());
  }

  @Test
  void letsAPointHaveATighterRule() {
    CheckRules checks =
        checks(
            """
            [check]
            tolerance-percent = 4
            longest-interval = "28d"

            [[point]]
            name = "drain"
            place = "drain"
            check-tolerance-percent = 2.5
            check-interval = "3d"
            """);
    assertEquals(4, checks.of(new PointName("tank")).tolerancePercent());
    assertEquals(Duration.ofDays(7), checks.of(new PointName("tank")).interval());
    CheckRule drain = checks.of(new PointName("drain"));
    assertEquals(new CheckRule(2.5, Duration.ofDays(3), Duration.ofDays(28)), drain);
  }

  @Test
  void usesTheUsualRuleWhereNothingIsSaid() {
    assertEquals(CheckRules.USUAL, checks(""));
  }

  @Test
  void saysWhichSolutionIsNotKnown() {
    fault(
        "[[standard]]\nname = \"low\"\nsolution = \"KCl 0.01 mol/l.\"\n",
        "7:1",
        "standard 'low'",
        "did you mean 'KCl 0.01 mol/L'?");
    fault(
        "[[standard]]\nname = \"low\"\nsolution = \"sea water\"\n",
        "7:1",
        "copy the table from the label");
  }

  @Test
  void saysWhatIsWrongWithARow() {
    String bottle = "[[standard]]\nname = \"low\"\nsolution = \"x\"\n";
    fault(
        bottle + "table = [\"20: 1278\", \"25 °C: 1413 µS/cm\"]\n", "8:1", "'20: 1278'", "20 °C:");
    fault(
        bottle + "table = [\"20 °C: 1278 µS/cm\", \"25 °C: 1413 mS/cm\"]\n",
        "8:1",
        "500 mS/cm",
        "check the unit");
    fault(bottle + "table = [\"25 °C: 1413 µS/cm\"]\n", "8:1", "1 entries", "2 to 60");
    fault(
        bottle + "table = [\"10 °C: 1020 µS/cm\", \"20 °C: 1278 µS/cm\"]\n",
        "8:1",
        "at least two rows around 25 °C");
    fault(
        bottle + "table = [\"20 °C: 1,278 mS/cm\", \"25 °C: 1.413 mS/cm\"]\n",
        "8:1",
        "decimal comma");
  }

  @Test
  void saysWhatIsWrongWithABottle() {
    String kcl = "solution = \"KCl 0.01 mol/L\"\n";
    fault("[[standard]]\nname = \"Low one\"\n" + kcl, "6:1", "'Low one'", "a short name");
    fault("[[standard]]\n" + kcl, "5:1", "'name' is missing");
    fault("[[standard]]\nname = \"low\"\n" + kcl + "opened = \"May\"\n", "8:1", "'May' is no day");
    fault(
        "[[standard]]\nname = \"low\"\n" + kcl + "opened = 2026-05-01\nexpires = 2026-04-01\n",
        "8:1",
        "after it expired");
    fault(
        "[[standard]]\nname = \"low\"\n" + kcl + "certificate-percent = 50\n",
        "8:1",
        "0.01 to 10 %");
    fault(
        "[[standard]]\nname = \"low\"\n" + kcl + "[[standard]]\nname = \"low\"\n" + kcl,
        "9:1",
        "another standard is called 'low'");
  }

  @Test
  void saysWhichRuleCannotBe() {
    fault("[check]\ntolerance-percent = 0\n", "6:1", "0.1 to 20 %");
    fault(
        "[check]\ninterval = \"14d\"\nlongest-interval = \"7d\"\n",
        "7:1",
        "the longest interval 7d is below the interval 14d");
    fault(
        "[[point]]\nname = \"drain\"\nplace = \"drain\"\ncheck-interval = \"1h\"\n",
        "8:1",
        "1d to 366d");
  }
}
