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
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The drift watch over recorded readings. */
@Command(
    name = "replay",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Looks for drift in recorded readings of one point, with the watch that runs live. Reads a",
      "table with the columns time, conductivity_uS_cm and temperature_C; an empty cell is a",
      "missing reading, other columns are left alone. Prints start,detected,size_percent,kind, a",
      "line for each finding: when it began, when it was noticed, what is there over what is",
      "normal less 100 %%, and step, ramp, unsteady or plain-water. What is normal is learnt from",
      "the table itself. A summary goes to standard error.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:replayed, whatever was found",
      "1:the file cannot be read",
      "2:the table or an option is not understood; the line and the remedy are printed"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ReplayCommand implements Callable<Integer> {
  private static final int NOT_READ = 1;
  private static final int NOT_UNDERSTOOD = 2;
  private static final int BUFFER = 1 << 16;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE.csv", description = "The recorded table.")
  private Path file;

  @Option(
      names = "--input-at-25",
      description = "The instrument had already referred the conductivity to 25 °C.")
  private boolean at25;

  @Option(
      names = "--all",
      description = "Print small changes below the notice limit and remarks as well.")
  private boolean all;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    PrintWriter out = spec.commandLine().getOut();
    try (BufferedReader in = open()) {
      Replay replay = new Replay(at25, all, out);
      replay.run(in);
      out.flush();
      if (out.checkError()) {
        throw new IOException("standard output was closed before the last row");
      }
      err.println(replay.summary());
      return 0;
    } catch (UnfitException e) {
      err.println(file + ": " + e.getMessage());
      return NOT_UNDERSTOOD;
    } catch (IOException e) {
      err.println(words(e));
      return NOT_READ;
    } finally {
      err.flush();
    }
  }

  private BufferedReader open() throws IOException {
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
