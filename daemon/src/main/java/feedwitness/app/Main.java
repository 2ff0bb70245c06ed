package feedwitness.app;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command line. */
@Command(
    name = "feedwitness",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Versions.class,
    subcommands = {
      RunCommand.class,
      DemoCommand.class,
      StatusCommand.class,
      AlarmsCommand.class,
      CheckCommand.class,
      PortsCommand.class,
      ListenCommand.class,
      CheckConfigCommand.class,
      ExplainCommand.class,
      ExamineCommand.class,
      ReplayCommand.class,
      ExportCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      ImportCommand.class,
      ConductivityCommand.class,
      MixCommand.class,
      AccessKeyCommand.class,
      PairCommand.class,
      DevicesCommand.class
    },
    sortOptions = false,
    description =
        "Watches the strength of your fertilizer solution: reads conductivity probes, refers them to"
            + " 25 °C, keeps every reading, and shows them on a page.%n",
    footer = {
      "",
      "New here?      feedwitness demo    try it without a probe",
      "Have a probe?  feedwitness ports   find its cable",
      "               feedwitness run     start, and set it up on the page",
      "",
      "Feedwitness measures and advises. It doses nothing and is no safety interlock."
    })
public final class Main implements Runnable {
  @Spec private CommandSpec spec;

  @SuppressWarnings("NullAway.Init") // picocli sets the spec before anything is run
  Main() {}

  public static void main(String[] arguments) {
    System.exit(commandLine().execute(arguments));
  }

  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setUsageHelpAutoWidth(true)
        .setParameterExceptionHandler(Main::explain)
        .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
  }

  /** What was wrong and where help is, rather than all the help there is. */
  private static int explain(CommandLine.ParameterException wrong, String[] arguments) {
    CommandLine command = wrong.getCommandLine();
    PrintWriter err = command.getErr();
    err.println(
        String.valueOf(wrong.getMessage())
            .replaceFirst("is not an? (double|long|int)$", "is no number"));
    if (!CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err)) {
      err.printf("Help: %s --help%n", command.getCommandSpec().qualifiedName());
    }
    err.flush();
    return command.getCommandSpec().exitCodeOnInvalidInput();
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  static final class Versions implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"feedwitness " + Version.text()};
    }
  }
}
