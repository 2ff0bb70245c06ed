package feedwitness.app;

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
      PortsCommand.class,
      ListenCommand.class,
      CheckConfigCommand.class,
      ExportCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      ImportCommand.class
    },
    sortOptions = false,
    description = {
      "Watches the strength of your fertilizer solution: reads conductivity probes,",
      "refers them to 25 °C, keeps every reading, and shows them on a page.",
      ""
    },
    footer = {
      "",
      "New here?      feedwitness demo             a nursery that exists only in this computer",
      "Have a probe?  feedwitness ports            which cable is which",
      "               feedwitness run              then set it up on the page",
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
        .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
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
