package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** The grower's table in, conductivities out. */
class ConductivityCommandTest {
  @TempDir private Path folder;

  private record Run(int code, List<String> out, List<String> err) {}

  private Run run(String table, String... more) throws IOException {
    Path file = folder.resolve("feeds.csv");
    Files.writeString(file, table);
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commandLine();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    String[] arguments = new String[2 + more.length];
    arguments[0] = "conductivity";
    arguments[1] = file.toString();
    System.arraycopy(more, 0, arguments, 2, more.length);
    int code = line.execute(arguments);
    return new Run(code, out.toString().lines().toList(), err.toString().lines().toList());
  }

  @Test
  void answersEachRowBesideItsOwnColumns() throws IOException {
    Run run =
        run("name,K,Cl,temperature_C\nstandard,0.01,0.01,25\n\"cold, the same\",0.01,0.01,5\n");
    assertEquals(0, run.code());
    assertEquals(
        "name,K,Cl,temperature_C,conductivity_mS_cm,uncertainty_mS_cm,ionic_strength_mol_kg,pH",
        run.out().get(0));
    assertEquals("standard,0.01,0.01,25,", run.out().get(1).substring(0, 22));
    assertTrue(run.out().get(2).startsWith("\"cold, the same\",0.01,0.01,5,"), run.out().get(2));
    // NIST, CRC Handbook: 1.40823 and 0.89096 mS/cm
    assertEquals(1.40823, Double.parseDouble(run.out().get(1).split(",", -1)[4]), 0.004);
    assertEquals(7.0, Double.parseDouble(run.out().get(1).split(",", -1)[7]), 0.01);
    assertTrue(run.err().isEmpty());
  }

  @Test
  void closesTheChargeBalanceWhereNoPhIsGiven() throws IOException {
    Run run = run("K,PO4,urea,temperature_C,pH\n0.02,0.02,0.1,25,\n0.02,0.02,,25,5.0\n");
    assertEquals(0, run.code());
    assertEquals(
        "K,PO4,urea,temperature_C,pH,conductivity_mS_cm,uncertainty_mS_cm,ionic_strength_mol_kg",
        run.out().get(0));
    assertEquals(4.6, Double.parseDouble(run.out().get(1).split(",", -1)[4]), 0.2);
    assertEquals("5.0", run.out().get(2).split(",", -1)[4]);
  }

  @Test
  void asksWhetherAnAlkaliIsMeant() throws IOException {
    Run run = run("K,NO3,temperature_C\n0.01,0,25\n0.01,0.01,25\n");
    assertEquals(0, run.code());
    assertEquals(1, run.err().size());
    assertTrue(
        run.err()
            .get(0)
            .endsWith(
                ":2: note: the charges balance only at pH 11.9; if it is not"
                    + " meant so, an ion is missing"),
        run.err().get(0));
  }

  @Test
  void writesTheFileItIsAskedFor() throws IOException {
    Path to = folder.resolve("answers.csv");
    Run run = run("Na,Cl,temperature_C\r\n0.1,0.1,25\r\n\r\n", "-o", to.toString());
    assertEquals(0, run.code());
    assertTrue(run.out().isEmpty());
    List<String> lines = Files.readAllLines(to);
    assertEquals(2, lines.size());
    // Robinson and Stokes: 106.69 S cm²/eq at 0.1005 mol/kg
    assertEquals(10.67, Double.parseDouble(lines.get(1).split(",", -1)[3]), 0.05);
  }

  @Test
  void explainsEveryRowItCannotAnswerAndAnswersTheRest() throws IOException {
    Run run =
        run(
            """
            K,NO3,Ca,temperature_C
            0.01,0.01,,25
            -0.01,0.01,,25
            0.01,0.02,,25
            0.01,0.01,,46
            "0,01",0.01,,25
            0.01,0.01,25
            120,120,,25
            0.01,0.01,,
            0.01,0.01,0,20
            """);
    assertEquals(ConductivityCommand.SOME_REFUSED, run.code());
    assertEquals(10, run.out().size());
    assertTrue(run.out().get(2).endsWith("25,,,,"), run.out().get(2));
    assertFalse(run.out().get(9).endsWith(",,,,"));
    String path = folder.resolve("feeds.csv").toString();
    List<String> said = run.err().stream().map(l -> l.replace(path, "feeds.csv")).toList();
    assertEquals(
        "feeds.csv:3: K: -0.01 mol/kg is beyond the limit 0 mol/kg; an amount cannot be negative",
        said.get(0));
    assertTrue(said.get(1).startsWith("feeds.csv:4: charge balance: 0.01"), said.get(1));
    assertEquals(
        "feeds.csv:5: temperature: 46 °C is beyond the limit 45 °C; the model holds from 0 to 45 °C",
        said.get(2));
    assertTrue(said.get(3).startsWith("feeds.csv:6: K: '0,01' is not a number"), said.get(3));
    assertTrue(said.get(4).startsWith("feeds.csv:7: 3 cells, but the header names 4"), said.get(4));
    assertTrue(said.get(5).startsWith("feeds.csv:8: K: 120 mol/kg is beyond the limit 10"));
    assertTrue(said.get(6).startsWith("feeds.csv:9: temperature_C is empty"), said.get(6));
    assertEquals("7 rows are not answered.", said.get(7));
  }

  @Test
  void refusesColumnsItDoesNotKnow() throws IOException {
    Run run = run("K,Li,K\n0.01,0.01,0.01\n");
    assertEquals(ConductivityCommand.CANNOT_BE_USED, run.code());
    assertTrue(run.out().isEmpty());
    assertTrue(run.err().get(0).contains(":1: column 2: 'Li' is not known; columns are K,Na,NH4"));
    assertTrue(run.err().get(1).contains("column 3: K stands there twice"));
    Run cold = run("K,Cl\n0.01,0.01\n");
    assertEquals(ConductivityCommand.CANNOT_BE_USED, cold.code());
    assertTrue(cold.err().get(0).contains("no column temperature_C"));
  }

  @Test
  void saysWhyAFileCannotBeRead() throws IOException {
    assertTrue(run("").err().get(0).contains("is empty"));
    StringWriter err = new StringWriter();
    CommandLine line = Main.commandLine();
    line.setErr(new PrintWriter(err));
    int code = line.execute("conductivity", folder.resolve("absent.csv").toString());
    assertEquals(ConductivityCommand.CANNOT_BE_USED, code);
    assertTrue(err.toString().contains("there is no such file"), err.toString());
    Path latin = folder.resolve("latin.csv");
    Files.write(latin, new byte[] {'n', 'o', 't', 'e', (byte) 0xE9, '\n'});
    StringWriter again = new StringWriter();
    line.setErr(new PrintWriter(again));
    assertEquals(2, line.execute("conductivity", latin.toString()));
    assertTrue(again.toString().contains("is not UTF-8"), again.toString());
  }
}
