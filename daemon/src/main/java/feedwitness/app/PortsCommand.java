package feedwitness.app;

import feedwitness.wire.PortCatalog;
import feedwitness.wire.PortCatalog.PortInfo;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists serial ports. */
@Command(
    name = "ports",
    mixinStandardHelpOptions = true,
    header = "Lists serial ports, and whether you may open them.",
    description =
        "%nShows for each port the name that stays when cables are swapped, what the cable says of"
            + " itself, and what to do if you may not open it.%n")
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class PortsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    List<PortInfo> ports = new PortCatalog(PortCatalog.BY_ID).list();
    if (ports.isEmpty()) {
      out.println("No serial port found. Plug the USB adapter in and try again;");
      out.println("a TCP serial server needs no port: write port = \"tcp:HOST:PORT\".");
    }
    for (PortInfo port : ports) {
      out.println(port.bestPath());
      if (port.stable().isPresent()) {
        out.println("    now at        " + port.device());
      } else {
        out.println("    stable name   none; this name may change when cables are swapped");
      }
      if (!port.description().isBlank()) {
        out.println("    says it is    " + port.description());
      }
      out.println("    may you open  " + (port.mayOpen() ? "yes" : "no: " + port.remedy()));
    }
    out.flush();
    return 0;
  }
}
