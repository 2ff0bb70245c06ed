package feedwitness.app;

import feedwitness.solution.ConductivityModel;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Foretells conductivities from a table of compositions. */
@Command(
    name = "conductivity",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Foretells what solutions of known composition should read.",
    description = {
      "%nFILE is a table of comma-separated values. Its first line names the columns:",
      "K,Na,NH4,Ca,Mg,Cl,NO3,SO4,PO4,CO3,urea in mol for each kilogram of water (a column left"
          + " out, or an empty cell, is 0), temperature_C, and pH if it is known; name and note are"
          + " copied. The output keeps all columns and adds conductivity_mS_cm,"
          + " uncertainty_mS_cm (one standard uncertainty), ionic_strength_mol_kg and pH.",
      "A row that cannot be answered keeps these empty and is explained, with its line, on"
          + " standard error.%n"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:every row is answered",
      "1:some rows are not; the others are",
      "2:the table cannot be read or written; nothing is answered"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ConductivityCommand implements Callable<Integer> {
  static final int SOME_REFUSED = 1;
  static final int CANNOT_BE_USED = 2;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "FILE", description = "The table of compositions.")
  private Path file;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "OUT.csv",
      description = "Write here instead of on standard output; replaces what is there.")
  private @Nullable Path output;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    try {
      return answer(err);
    } catch (NoSuchFileException e) {
      err.println(e.getFile() + ": there is no such file");
    } catch (CharacterCodingException e) {
      err.println(file + ": is not UTF-8 text; save the table as CSV (UTF-8)");
    } catch (IOException e) {
      err.println("the table cannot be read or written: " + e.getMessage());
    } finally {
      err.flush();
    }
    return CANNOT_BE_USED;
  }

  private int answer(PrintWriter err) throws IOException {
    // read before anything is written: the output may be the same file
    List<String> lines = lines();
    int first = firstLine(lines);
    if (first < 0) {
      err.println(file + ": is empty; the first line names the columns");
      return CANNOT_BE_USED;
    }
    List<String> header = CsvLine.cells(lines.get(first));
    CompositionColumns columns = new CompositionColumns(header);
    if (!columns.problems().isEmpty()) {
      columns.problems().forEach(problem -> err.printf("%s:%d: %s%n", file, first + 1, problem));
      return CANNOT_BE_USED;
    }
    Path to = output;
    if (to == null) {
      PrintWriter out = spec.commandLine().getOut();
      return rows(lines, first, columns, out, err);
    }
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(to))) {
      int code = rows(lines, first, columns, out, err);
      if (out.checkError()) {
        throw new IOException(to + ": writing failed; is the disk full?");
      }
      return code;
    }
  }

  private List<String> lines() throws IOException {
    try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      List<String> lines = new ArrayList<>(reader.lines().toList());
      if (!lines.isEmpty() && lines.get(0).indexOf(BYTE_ORDER_MARK) == 0) {
        lines.set(0, lines.get(0).substring(1));
      }
      return lines;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static int firstLine(List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      if (!lines.get(i).isBlank()) {
        return i;
      }
    }
    return -1;
  }

  private int rows(
      List<String> lines, int first, CompositionColumns columns, PrintWriter out, PrintWriter err) {
    List<String> header = new ArrayList<>(CsvLine.cells(lines.get(first)));
    header.addAll(ConductivityRow.added(columns));
    out.println(CsvLine.of(header));
    ConductivityModel model = new ConductivityModel();
    int refused = 0;
    for (int i = first + 1; i < lines.size(); i++) {
      if (lines.get(i).isBlank()) {
        continue;
      }
      ConductivityRow row = ConductivityRow.of(CsvLine.cells(lines.get(i)), columns, model);
      out.println(CsvLine.of(row.cells()));
      int line = i + 1;
      row.remark().ifPresent(remark -> err.printf("%s:%d: %s%n", file, line, remark));
      refused += row.answered() ? 0 : 1;
    }
    out.flush();
    if (refused > 0) {
      err.println(refused == 1 ? "1 row is not answered." : refused + " rows are not answered.");
    }
    return refused > 0 ? SOME_REFUSED : 0;
  }
}
