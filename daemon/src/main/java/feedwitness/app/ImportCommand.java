package feedwitness.app;

import feedwitness.publish.ExportQuery;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Readings of another recorder brought into the history. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Brings in readings that something else recorded.",
    description =
        "%nWorks whether the service runs or not. Columns, units, numbers and "
            + "dates are found out and shown; what cannot be told for certain is asked. "
            + "Readings that are there already are found and left out, so an import can "
            + "be repeated. Nothing is merged or reordered. Try --dry-run first.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:every reading of the file is in the history",
      "1:it could not be done, or only in part; the reason is printed",
      "2:an option or the file cannot be used, or a question must be answered first",
      "3:done, but some rows were left out; they are counted and the first are shown"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ImportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "A table as text (CSV).")
  private Path file;

  @Option(
      names = "--point",
      required = true,
      paramLabel = "NAME",
      description = "The measuring point whose readings they are.")
  private String point;

  @Option(names = "--dry-run", description = "Only say what would be imported, and how.")
  private boolean dryRun;

  @Mixin private ImportWishes wishes;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    if (!PointName.isValid(point)) {
      throw new ParameterException(
          spec.commandLine(), "--point '%s' is no name of a measuring point".formatted(point));
    }
    Whereabouts.Found found = whereabouts.find(true);
    if (found instanceof Whereabouts.Found.Nothing nothing && !dryRun) {
      err.println(nothing.message());
      return nothing.exitCode();
    }
    ImportPlan plan;
    ImportFindings findings;
    try {
      plan = plan(found);
      findings = new ImportFindings(plan);
      ImportWalk.walk(plan, findings);
    } catch (IOException | IllegalArgumentException e) {
      err.println("import: " + e.getMessage());
      return Exit.USAGE;
    }
    new ImportReport(plan, findings, spec.commandLine().getOut()).print();
    if (!plan.questions().isEmpty()) {
      err.println("Before anything is imported:");
      plan.questions().forEach(question -> err.println("  " + question));
      return Exit.USAGE;
    }
    if (dryRun) {
      spec.commandLine().getOut().println("Dry run: nothing was imported.");
      return left(findings) > 0 ? Exit.PARTLY : Exit.DONE;
    }
    return send(found, plan, findings);
  }

  private static long left(ImportFindings findings) {
    return findings.undated + findings.tally.count();
  }

  private ImportPlan plan(Whereabouts.Found found) throws IOException {
    PointName name = new PointName(point);
    ZoneId zone = ZoneId.systemDefault();
    Instant now = Instant.now();
    if (found instanceof Whereabouts.Found.Running running) {
      zone = running.service().zone();
      now = running.service().now();
      refuseUnknown(name, running.service().points());
    } else if (found instanceof Whereabouts.Found.Stopped stopped) {
      zone = stopped.config().site().zone();
      refuseUnknown(name, stopped.config().site().points().stream().map(p -> p.name()).toList());
    }
    return ImportPlan.make(TableFile.open(file), name, wishes, zone, now);
  }

  private static void refuseUnknown(PointName name, List<PointName> there) throws IOException {
    if (!there.contains(name)) {
      throw new IOException(
          ExportQuery.noSuchPoint(name.text(), there)
              + "; set it up first, as one without a probe if it is only for old readings");
    }
  }

  private int send(Whereabouts.Found found, ImportPlan plan, ImportFindings findings) {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    ProgressBar progress = new ProgressBar(err, Terminal.watchesErrors(), findings.lines);
    try (ImportTarget target = target(found)) {
      ImportSender sender = new ImportSender(plan, wishes.allowFuture, target, progress);
      try {
        ImportWalk.walk(plan, sender);
        sender.finish();
      } catch (IOException e) {
        progress.end();
        err.printf(
            "import: %s%n%d readings were taken before that; import again: what is there is found.%n",
            e.getMessage(), sender.taken());
        return Exit.FAILED;
      }
      progress.end();
      out.printf(
          "%d readings imported for %s, safe on disk; %d were there already; %d rows left out.%n",
          sender.taken(), point, sender.known(), left(findings));
      if (sender.retired() > 0) {
        out.printf(
            "%d were left out because only roll-ups are kept of their minutes (store.keep-raw): whether they are in those cannot be told any more.%n",
            sender.retired());
      }
      out.flush();
      return left(findings) + sender.retired() > 0 ? Exit.PARTLY : Exit.DONE;
    } catch (IOException e) {
      err.println("import: " + e.getMessage());
      return Exit.FAILED;
    }
  }

  private static ImportTarget target(Whereabouts.Found found) throws IOException {
    return found instanceof Whereabouts.Found.Running running
        ? new RunningTarget(running.service())
        : StoppedTarget.open(((Whereabouts.Found.Stopped) found).config());
  }
}
