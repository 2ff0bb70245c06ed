package feedwitness.app;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine;

/** Runs a command of the program in this process and keeps what it says. */
record Cli(int code, String out, String err) {
  static Cli run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    int code = line.execute(arguments);
    return new Cli(code, out.toString(), err.toString());
  }

  /** A command in a Java machine of its own with little memory, as on a small board. */
  static ProcessBuilder ownProcess(String heap, List<String> arguments) {
    List<String> words =
        new java.util.ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                heap,
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
    words.addAll(arguments);
    return new ProcessBuilder(words).redirectErrorStream(true);
  }
}
