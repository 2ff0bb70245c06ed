package feedwitness.app;

import feedwitness.publish.RemoteService;
import java.io.IOException;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;

/** What only a running service can do. */
final class Asking {
  private Asking() {}

  /** Something asked of it, with what is to be printed. */
  @FunctionalInterface
  interface Question {
    void ask(RemoteService service, PrintWriter out) throws IOException;
  }

  /** Finds the service and asks; the exit code. */
  static int service(CommandSpec spec, Whereabouts whereabouts, String command, Question question) {
    PrintWriter err = spec.commandLine().getErr();
    Whereabouts.Found found = whereabouts.find(false);
    if (found instanceof Whereabouts.Found.Nothing nothing) {
      err.println(nothing.message());
      return nothing.exitCode();
    }
    if (!(found instanceof Whereabouts.Found.Running running)) {
      err.println(command + ": the service does not run; start it, then try again");
      return Exit.FAILED;
    }
    try {
      PrintWriter out = spec.commandLine().getOut();
      question.ask(running.service(), out);
      out.flush();
      return Exit.DONE;
    } catch (IOException e) {
      err.println(command + ": " + e.getMessage());
      return Exit.FAILED;
    } finally {
      err.flush();
    }
  }
}
