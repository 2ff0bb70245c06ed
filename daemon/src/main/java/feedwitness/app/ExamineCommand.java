package feedwitness.app;

import feedwitness.app.CsvRows.UnfitException;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.TemperatureCompensation;
import java.io.BufferedReader;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The measurement chain over recorded readings. */
@Command(
    name = "examine",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Measures recorded readings again: refers them to 25 °C, states an uncertainty and flags",
      "what a probe in good order would not say. Reads a table with the columns time,",
      "conductivity_uS_cm and temperature_C; an empty cell is a missing reading, other columns",
      "are kept. Writes the same rows with conductivity25_mS_cm, uncertainty_mS_cm and flags",
      "added; several flags are parted by |. A summary goes to standard error.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:examined, whatever was found",
      "1:a file cannot be read or written",
      "2:the table or an option is not understood; the line and the remedy are printed"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ExamineCommand implements Callable<Integer> {
  static final int NOT_READ = 1;
  static final int NOT_UNDERSTOOD = 2;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE.csv", description = "The recorded table.")
  private Path file;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "OUT.csv",
      description = "Where to write. Default: standard output.")
  private @Nullable Path output;

  @Option(
      names = "--input-at-25",
      description = "The instrument had already referred the conductivity to 25 °C.")
  private boolean at25;

  @Option(
      names = "--compensation",
      paramLabel = "WAY",
      defaultValue = "LINEAR",
      description =
          "How to refer to 25 °C: linear, iso7888 (source water), kcl (standards) or none."
              + " Default: linear.")
  private Way compensation;

  @Option(
      names = "--percent-per-kelvin",
      paramLabel = "N",
      defaultValue = "1.88",
      description = "Coefficient of linear compensation, %%/K. Default: ${DEFAULT-VALUE}.")
  private double percentPerKelvin;

  @Option(
      names = "--rated",
      split = ",",
      arity = "1",
      paramLabel = "MIN,MAX",
      description = "What the instrument is rated for, mS/cm. Default: not judged.")
  private double @Nullable [] rated;

  @Option(
      names = "--resolution",
      paramLabel = "N",
      description = "Smallest step of the instrument, mS/cm. Default: learnt.")
  private double resolution = Double.NaN;

  @Option(
      names = "--accuracy",
      paramLabel = "N",
      defaultValue = "2",
      description = "Stated accuracy of conductivity, ± %% of reading. Default: ${DEFAULT-VALUE}.")
  private double accuracy;

  @Option(
      names = "--temperature-accuracy",
      paramLabel = "N",
      defaultValue = "0.5",
      description = "Stated accuracy of temperature, ± K. Default: ${DEFAULT-VALUE}.")
  private double temperatureAccuracy;

  @Option(
      names = "--dry-is-normal",
      description = "The probe lies where there is often no water, as in a drain tray.")
  private boolean dryIsNormal;

  /** How to refer to 25 °C. */
  enum Way {
    LINEAR,
    ISO7888,
    KCL,
    NONE
  }

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    Examination examination =
        new Examination(at25, compensationAsked(), limitsAsked(), dryIsNormal);
    try {
      ExaminationSummary summary =
          output == null ? toStandardOutput(examination) : to(output, examination);
      summary.print(err);
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

  private ExaminationSummary toStandardOutput(Examination examination)
      throws IOException, UnfitException {
    PrintWriter out = spec.commandLine().getOut();
    ExaminationSummary summary = examine(examination, out);
    if (out.checkError()) {
      throw new IOException("standard output was closed before the last row");
    }
    return summary;
  }

  /** Writes beside the target and moves it there at the end: never half a table. */
  private ExaminationSummary to(Path target, Examination examination)
      throws IOException, UnfitException {
    Path fresh = target.resolveSibling(target.getFileName() + ".part");
    try {
      ExaminationSummary summary;
      try (Writer out = Files.newBufferedWriter(fresh, StandardCharsets.ISO_8859_1)) {
        summary = examine(examination, out);
      }
      Files.move(fresh, target, StandardCopyOption.REPLACE_EXISTING);
      return summary;
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** The table is read twice; what comes through a pipe is kept in a file meanwhile. */
  private ExaminationSummary examine(Examination examination, Writer out)
      throws IOException, UnfitException {
    if (Files.isDirectory(file)) {
      throw new FileNotFoundException(file + " is a folder; name a table in it");
    }
    if (!Files.exists(file) || Files.isRegularFile(file)) {
      return examination.run(() -> open(file), out);
    }
    Path kept = Files.createTempFile("examined", ".csv");
    try {
      try (InputStream in = Files.newInputStream(file)) {
        Files.copy(in, kept, StandardCopyOption.REPLACE_EXISTING);
      }
      return examination.run(() -> open(kept), out);
    } finally {
      Files.deleteIfExists(kept);
    }
  }

  /** One octet a character, so that cells in any encoding come out as they went in. */
  private static BufferedReader open(Path table) throws IOException {
    return Files.newBufferedReader(table, StandardCharsets.ISO_8859_1);
  }

  private TemperatureCompensation compensationAsked() {
    if (!(percentPerKelvin > 0 && percentPerKelvin < 4)) {
      throw new ParameterException(
          spec.commandLine(),
          "--percent-per-kelvin %s is outside 0 to 4 %%/K; feeds have 1.8 to 2.1"
              .formatted(percentPerKelvin));
    }
    return switch (compensation) {
      case LINEAR -> new TemperatureCompensation.Linear(percentPerKelvin / 100, 0.0006);
      case ISO7888 -> new TemperatureCompensation.NaturalWater();
      case KCL -> new TemperatureCompensation.Kcl();
      case NONE -> new TemperatureCompensation.None();
    };
  }

  private InstrumentLimits limitsAsked() {
    double[] range = rated == null ? new double[] {Double.NaN, Double.NaN} : rated;
    if (range.length != 2 || range[0] < 0 || range[0] >= range[1]) {
      throw new ParameterException(
          spec.commandLine(), "--rated must be two numbers in mS/cm, the lower first: 0,20");
    }
    positive("--accuracy", accuracy);
    positive("--temperature-accuracy", temperatureAccuracy);
    if (!Double.isNaN(resolution)) {
      positive("--resolution", resolution);
    }
    return new InstrumentLimits(
        range[0], range[1], Double.NaN, Double.NaN, resolution, accuracy, temperatureAccuracy);
  }

  private void positive(String option, double value) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new ParameterException(
          spec.commandLine(), "%s %s is not above 0".formatted(option, value));
    }
  }

  private static String words(IOException e) {
    if (e instanceof NoSuchFileException missing) {
      return missing.getFile() + ": there is no such file or folder; check the path";
    }
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + ": you may not read or write it; check its owner and rights";
    }
    if (e instanceof FileSystemException other && other.getReason() != null) {
      return other.getFile() + ": " + other.getReason();
    }
    return String.valueOf(e.getMessage());
  }
}
