package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Recipes in, mixing sheets out; the examples of the documentation among them. */
class MixCommandTest {
  private static final Pattern BLOCK =
      Pattern.compile("```(toml|text)\\n(.*?)\\n```", Pattern.DOTALL);

  @TempDir private Path folder;

  private record Block(String kind, String text) {}

  private static List<Block> documented() throws IOException {
    List<Block> blocks = new ArrayList<>();
    Matcher block = BLOCK.matcher(Files.readString(Path.of("docs/feed.md")));
    while (block.find()) {
      blocks.add(new Block(block.group(1), block.group(2)));
    }
    return blocks;
  }

  private Cli mix(String recipe, String... more) throws IOException {
    Path file = folder.resolve("recipe.toml");
    Files.writeString(file, recipe);
    List<String> arguments = new ArrayList<>(List.of("mix", file.toString()));
    arguments.addAll(List.of(more));
    return Cli.run(arguments.toArray(new String[0]));
  }

  @Test
  void answersTheExamplesOfTheDocumentationAsPrinted() throws IOException {
    List<Block> blocks = documented();
    int examples = 0;
    for (int i = 0; i + 1 < blocks.size(); i++) {
      if (blocks.get(i).kind().equals("toml") && blocks.get(i + 1).kind().equals("text")) {
        Cli run = mix(blocks.get(i).text());
        assertEquals("", run.err());
        assertEquals(
            blocks.get(i + 1).text().lines().toList(),
            run.out().lines().limit(blocks.get(i + 1).text().lines().count()).toList());
        examples++;
      }
    }
    assertEquals(3, examples);
  }

  @Test
  void mixesWithTheOwnProductOfTheDocumentation() throws IOException {
    String product =
        documented().stream()
            .filter(b -> b.text().contains("[[product]]"))
            .findFirst()
            .orElseThrow()
            .text();
    Cli run =
        mix(
            """
            [water]
            measured = "0.46 mS/cm"
            [goal]
            strength = "1.5 mS/cm"
            frequency = "weekly"
            [[use]]
            product = "bench-feed"
            [make]
            volume = "20 imp gal"
            """
                + product);
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("Bench Feed 13.7-5.3-21.1"), run::out);
    assertTrue(run.out().contains("fitted to the bag at hand"), run::out);
  }

  @Test
  void namesEveryFaultWithItsPlace() throws IOException {
    Cli run =
        mix(
            """
            [water]
            measured = "0,46"
            [goal]
            strength = "150 ppm"
            [[use]]
            product = "MgSO4·5H2O"
            [[use]]
            product = "house-feed"
            purity = 120
            [make]
            volum = 4
            """);
    assertEquals(2, run.code());
    assertEquals("", run.out());
    List<String> places =
        run.err()
            .lines()
            .map(line -> line.replaceAll(".*recipe\\.toml:(\\d+:\\d+): ([^ :]+).*", "$1 $2"))
            .toList();
    assertEquals(
        List.of(
            "2:1 water.measured",
            "3:1 goal.frequency",
            "4:1 goal.strength",
            "6:1 use[1].product",
            "9:1 use[2].purity",
            "10:1 make",
            "11:1 make.volum",
            "7 problems; nothing mixed."),
        places);
  }

  @Test
  void tellsWhatIsNoToml() throws IOException {
    Cli run = mix("[water]\nmeasured = 0,46\n");
    assertEquals(2, run.code());
    assertTrue(run.err().contains(":2:"), run::err);
    assertTrue(run.err().contains("decimal comma"), run::err);
    assertEquals(2, Cli.run("mix", folder.resolve("none.toml").toString()).code());
  }

  @Test
  void writesJsonAndTables() throws IOException {
    String recipe = documented().get(0).text();
    Cli json = mix(recipe, "--format", "json");
    assertTrue(json.out().contains("\"grams\" : 677"), json::out);
    Cli table = mix(recipe, "--format", "csv");
    assertTrue(table.out().contains("weigh,house-feed,677,g,tank"), table::out);
    assertTrue(table.out().startsWith("kind,name,amount,unit,note"), table::out);
    Path to = folder.resolve("sheet.txt");
    assertEquals(0, mix(recipe, "-o", to.toString()).code());
    assertTrue(Files.readString(to).contains("677 g of House Feed"));
  }

  @Test
  void asksForACheckAlone() throws IOException {
    Cli run =
        mix("[check]\ndraw-down = { drawn = \"1 L\", delivered = \"70 L\", should-make = 80 }\n");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("sure: 14 % more stock"), run::out);
  }
}
