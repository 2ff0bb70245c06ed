package feedwitness.app;

import feedwitness.publish.access.AccessKey;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the secret without which the page stays on this machine. */
@Command(
    name = "access-key",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Makes an access key, so that the page can be taken to a phone.",
    description =
        "%nWrites 256 random bits into a new file that only you may read. The service must be able to"
            + " read it: run this as its user (for example: sudo -u feedwitness).%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:the key is written", "1:it could not be written; the reason is printed"})
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class AccessKeyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The new file, such as access.key.")
  private Path file;

  @Override
  public Integer call() {
    Path target = file.toAbsolutePath().normalize();
    try {
      AccessKey.make(target);
    } catch (IOException e) {
      PrintWriter err = spec.commandLine().getErr();
      err.println("access-key: " + e.getMessage());
      err.flush();
      return Exit.FAILED;
    }
    PrintWriter out = spec.commandLine().getOut();
    out.printf("Written: %s, readable by you alone. In the configuration:%n%n", target);
    out.printf("  [server]%n  listen = \"0.0.0.0:8460\"%n%n");
    out.printf("  [web]%n  access-key-file = \"%s\"%n%n", target);
    out.println("Then start the service again and let a phone in with: feedwitness pair");
    out.flush();
    return Exit.DONE;
  }
}
