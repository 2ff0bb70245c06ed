package feedwitness.app;

import feedwitness.quantity.TimeSource;
import feedwitness.store.Inventory;
import feedwitness.store.Restore;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A backup put in the place of the readings. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Puts a backup in the place of the readings.",
    description =
        "%nStop the service first. The backup is read from end to end before "
            + "anything is replaced, and what it replaces is kept beside it as "
            + "history-replaced-DATE.mv.db.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:restored; or, with --check-only, the backup is whole",
      "1:nothing was replaced; the reason is printed",
      "2:an option cannot be used",
      "3:done, but pieces of the backup cannot be read"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class RestoreCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "A file made by backup.")
  private Path archive;

  @Option(
      names = "--check-only",
      description = "Only read the backup from end to end; the service may run.")
  private boolean checkOnly;

  @Option(
      names = "--even-if-damaged",
      description = "Restore what can be read of a backup that is partly damaged.")
  private boolean evenDamaged;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    if (whereabouts.namesService()) {
      throw new ParameterException(
          spec.commandLine(),
          "restore replaces files of a service that is stopped; name them with --config or --data instead of --url");
    }
    PrintWriter out = spec.commandLine().getOut();
    Path file = archive.toAbsolutePath().normalize();
    Restore.Outcome outcome =
        checkOnly
            ? Restore.check(file, Path.of(System.getProperty("java.io.tmpdir")))
            : new Restore(whereabouts.directory(), TimeSource.system()).run(file, evenDamaged);
    if (outcome instanceof Restore.Outcome.Refused refused) {
      spec.commandLine().getErr().println("restore: " + refused.message());
      return Exit.FAILED;
    }
    Inventory holds;
    if (outcome instanceof Restore.Outcome.Restored restored) {
      holds = restored.holds();
      out.printf("Restored into %s.%n", whereabouts.directory());
      restored.replaced().ifPresent(old -> out.printf("What was there is kept as %s.%n", old));
      restored
          .configuration()
          .ifPresent(
              folder ->
                  out.printf(
                      "The configuration of the backup lies in %s; compare it with yours, which was left as it is.%n",
                      folder));
      out.println("Start the service again.");
    } else {
      holds = ((Restore.Outcome.Checked) outcome).holds();
      out.printf("%s can be restored.%n", archive);
    }
    describe(holds, out);
    out.flush();
    return holds.damaged() > 0 ? Exit.PARTLY : Exit.DONE;
  }

  private static void describe(Inventory holds, PrintWriter out) {
    out.printf(
        "  %d readings of %s%n",
        holds.samples(),
        holds.points().isEmpty()
            ? "no point"
            : holds.points().stream().map(p -> p.text()).collect(Collectors.joining(", ")));
    if (holds.first().isPresent() && holds.last().isPresent()) {
      out.printf("  from %s to %s%n", holds.first().get(), holds.last().get());
    }
    if (holds.undated() > 0) {
      out.printf("  %d of them without a date yet%n", holds.undated());
    }
    if (holds.damaged() > 0) {
      out.printf("  %d pieces cannot be read, the first of them:%n", holds.damaged());
      holds.damage().forEach(words -> out.printf("    %s%n", words));
    }
  }
}
