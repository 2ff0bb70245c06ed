package feedwitness.settings;

import java.util.List;

/** What became of reading a configuration. */
public sealed interface ConfigOutcome {

  /**
   * It can be used as it stands.
   *
   * @param notes what the user should know, though nothing is wrong
   */
  record Read(Config config, List<String> notes) implements ConfigOutcome {
    public Read {
      notes = List.copyOf(notes);
    }
  }

  /**
   * It cannot be used; nothing was repaired or left out silently.
   *
   * @param problems all there are, at least one, in order of file, line and column
   */
  record Faulty(List<Problem> problems) implements ConfigOutcome {
    public Faulty {
      problems = List.copyOf(problems);
    }
  }
}
