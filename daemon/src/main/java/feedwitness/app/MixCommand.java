package feedwitness.app;

import feedwitness.feed.MixOutcome;
import feedwitness.feed.Mixer;
import feedwitness.publish.MixJson;
import feedwitness.settings.RecipeFile;
import feedwitness.solution.ConductivityModel;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Works out a recipe. */
@Command(
    name = "mix",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "From a strength or nutrients to grams, and what your meter will show.",
    description = {
      "%nRECIPE.toml says water, goal, products and how much; for example:",
      "",
      "  [water]",
      "  measured = \"0.46 mS/cm\"",
      "  [goal]",
      "  strength = \"1.50 mS/cm\"",
      "  frequency = \"every watering\"",
      "  [[use]]",
      "  product = \"house-feed\"",
      "  [make]",
      "  volume = \"600 L\"",
      "",
      "Needs no probe and no service. Doses nothing.%n"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:worked out",
      "1:it cannot be written",
      "2:the recipe cannot be used; every fault is named"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class MixCommand implements Callable<Integer> {
  /** How the sheet is written. */
  enum Format {
    TEXT,
    JSON,
    CSV
  }

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "RECIPE.toml", description = "The recipe.")
  private Path recipe;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "text",
      description = "text (one page to print), json or csv; text unless given.")
  private Format format;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Write here instead of on standard output; replaces what is there.")
  private @Nullable Path output;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    RecipeFile.Outcome outcome = RecipeFile.mix(recipe, new Mixer(new ConductivityModel()));
    if (outcome instanceof RecipeFile.Outcome.Faulty faulty) {
      faulty.problems().forEach(problem -> err.println(problem.text()));
      int count = faulty.problems().size();
      err.println(count == 1 ? "1 problem; nothing mixed." : count + " problems; nothing mixed.");
      err.flush();
      return Exit.USAGE;
    }
    List<String> lines = lines(((RecipeFile.Outcome.Mixed) outcome).mix());
    Path to = output;
    if (to == null) {
      PrintWriter out = spec.commandLine().getOut();
      lines.forEach(out::println);
      out.flush();
      return Exit.DONE;
    }
    try {
      Files.write(to, lines);
      return Exit.DONE;
    } catch (IOException e) {
      err.println(to + ": cannot be written: " + e.getMessage());
      err.flush();
      return Exit.FAILED;
    }
  }

  private List<String> lines(MixOutcome.Mixed mixed) {
    return switch (format) {
      case TEXT -> MixText.lines(mixed);
      case CSV -> MixTable.lines(mixed);
      case JSON -> MixJson.text(MixJson.Answer.of(mixed)).lines().toList();
    };
  }
}
