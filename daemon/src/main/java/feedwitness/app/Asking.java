package feedwitness.app;

import feedwitness.publish.RemoteService;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** Commands that only ask the running service something. */
final class Asking {
  private Asking() {}

  /** A question, answered in lines. */
  interface Question {
    List<String> ask(RemoteService service) throws IOException;
  }

  /** Prints the answer, or why there is none. */
  static int print(CommandSpec spec, Whereabouts whereabouts, Question question) {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    Whereabouts.Found found = whereabouts.find(false);
    if (found instanceof Whereabouts.Found.Nothing nothing) {
      err.println(nothing.message());
      return nothing.exitCode();
    }
    if (!(found instanceof Whereabouts.Found.Running running)) {
      err.println("the service does not run; start it with `feedwitness run`");
      return Exit.FAILED;
    }
    try {
      question.ask(running.service()).forEach(out::println);
      return Exit.DONE;
    } catch (IOException e) {
      err.println(spec.name() + ": " + e.getMessage());
      return Exit.FAILED;
    }
  }
}
