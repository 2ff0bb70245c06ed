package feedwitness.app;

import feedwitness.app.CsvRows.UnfitException;
import java.io.BufferedReader;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The drift watch over recorded readings. */
@Command(
    name = "replay",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Looks for drift in recorded readings, with the watch that runs live: with --line in what is",
      "stored of a feed line, its source, changes and checks, whether the service runs or not; else",
      "in a table of one point. Reads a table with the columns time, conductivity_uS_cm and temperature_C; an empty cell is a",
      "missing reading, other columns are left alone. Prints start,detected,size_percent,kind, a",
      "line for each finding: when it began, when it was noticed, what is there over what is",
      "normal less 100 %%, and step, ramp, unsteady or plain-water. What is normal is learnt from",
      "the table itself. A summary goes to standard error.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:replayed, whatever was found",
      "1:the file or what is stored cannot be read, or there is no such feed line",
      "2:the table, an option or the configuration is not understood; the remedy is printed"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ReplayCommand implements Callable<Integer> {
  private static final int NOT_READ = 1;
  private static final int NOT_UNDERSTOOD = 2;
  private static final int BUFFER = 1 << 16;

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE.csv",
      description = "The recorded table; unless --line is given.")
  private @Nullable Path file;

  @Option(
      names = "--line",
      paramLabel = "NAME",
      description = "A feed line of the configuration, over what is stored of it.")
  private @Nullable String line;

  @Option(
      names = "--from",
      paramLabel = "TIME",
      description =
          "With --line: the first time, such as 2026-06-01. Default: the first reading, from which"
              + " the answer is that of the live watch.")
  private @Nullable String from;

  @Option(
      names = "--to",
      paramLabel = "TIME",
      description =
          "With --line: the time up to which, itself left out. Default: the last reading.")
  private @Nullable String to;

  @Option(
      names = "--input-at-25",
      description = "The instrument had already referred the conductivity to 25 °C.")
  private boolean at25;

  @Option(
      names = "--all",
      description = "Print small changes below the notice limit and remarks as well.")
  private boolean all;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    Path table = file;
    String stored = line;
    if ((table == null) == (stored == null)) {
      throw new ParameterException(
          spec.commandLine(), "give a table, or a feed line with --line NAME, and not both");
    }
    if (table != null) {
      if (from != null || to != null) {
        throw new ParameterException(
            spec.commandLine(), "--from and --to are for --line; cut the table instead");
      }
      return table(table);
    }
    if (at25) {
      throw new ParameterException(
          spec.commandLine(),
          "--input-at-25 is for tables; what is stored says itself what was referred to 25 °C");
    }
    return stored(new StoredReplay(String.valueOf(stored), from, to, all));
  }

  private Integer stored(StoredReplay replay) {
    PrintWriter err = spec.commandLine().getErr();
    Whereabouts.Found found = whereabouts.find(false);
    if (found instanceof Whereabouts.Found.Nothing nothing) {
      err.println(nothing.message());
      return nothing.exitCode();
    }
    try {
      replay.ask(found).print(spec.commandLine().getOut(), err);
      return Exit.DONE;
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
    } catch (IOException | IllegalStateException e) {
      err.println("replay: " + e.getMessage());
      return Exit.FAILED;
    } finally {
      err.flush();
    }
  }

  private Integer table(Path table) {
    PrintWriter err = spec.commandLine().getErr();
    PrintWriter out = spec.commandLine().getOut();
    try (BufferedReader in = open(table)) {
      Replay replay = new Replay(at25, all, out);
      replay.run(in);
      out.flush();
      if (out.checkError()) {
        throw new IOException("standard output was closed before the last row");
      }
      err.println(replay.summary());
      return 0;
    } catch (UnfitException e) {
      err.println(table + ": " + e.getMessage());
      return NOT_UNDERSTOOD;
    } catch (IOException e) {
      err.println(words(e));
      return NOT_READ;
    } finally {
      err.flush();
    }
  }

  private static BufferedReader open(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new FileNotFoundException(file + " is a folder; name a table in it");
    }
    return new BufferedReader(
        new InputStreamReader(Files.newInputStream(file), StandardCharsets.ISO_8859_1), BUFFER);
  }

  private static String words(IOException e) {
    if (e instanceof NoSuchFileException missing) {
      return missing.getFile() + ": there is no such file or folder; check the path";
    }
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + ": you may not read it; check its owner and rights";
    }
    return String.valueOf(e.getMessage());
  }
}
