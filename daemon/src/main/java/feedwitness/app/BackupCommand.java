package feedwitness.app;

import feedwitness.store.StoredHistory;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** All readings in one file. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Writes a backup of all readings, while recording goes on.",
    description =
        "%nWorks whether the service runs or not. The configuration is in it, but not the files "
            + "with secrets that it names: copy those as well.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the backup is written and whole",
      "1:it could not be made; the reason is printed and no file is left",
      "2:an option or the configuration cannot be used"
    },
    footer = {
      "",
      "Keep it on another disk. To prove it: feedwitness restore --check-only FILE",
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class BackupCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The new file, such as readings-2026-06.zip.")
  private Path target;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    Whereabouts.Found found = whereabouts.find(false);
    if (found instanceof Whereabouts.Found.Nothing nothing) {
      err.println(nothing.message());
      return nothing.exitCode();
    }
    try {
      if (found instanceof Whereabouts.Found.Running running) {
        NewFile.make(
            target,
            out -> {
              try (InputStream in = running.service().backup()) {
                in.transferTo(out);
              }
            });
      } else {
        fromFile((Whereabouts.Found.Stopped) found);
      }
      PrintWriter out = spec.commandLine().getOut();
      out.printf("Backup written: %s, %d kB.%n", target, (Files.size(target) + 1023) / 1024);
      out.flush();
      return Exit.DONE;
    } catch (IOException e) {
      err.println("backup: " + e.getMessage());
      return Exit.FAILED;
    }
  }

  private void fromFile(Whereabouts.Found.Stopped found) throws IOException {
    NewFile.refuseExisting(target);
    StoredHistory.Opening opening = StoredHistory.open(found.config().storeDirectory());
    if (opening instanceof StoredHistory.Opening.Refused refused) {
      throw new IOException(refused.message());
    }
    Path part = target.toAbsolutePath().resolveSibling(target.getFileName() + ".making");
    try (StoredHistory history = ((StoredHistory.Opening.Opened) opening).history()) {
      history.backup(part, BackedUpConfiguration.of(found.files()));
      NewFile.make(target, out -> Files.copy(part, out));
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
