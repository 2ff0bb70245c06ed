package feedwitness.simulate;

import java.util.List;

/** A nursery file that cannot be followed; all its faults at once, each with line and remedy. */
public final class ScheduleException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final transient List<String> problems;

  ScheduleException(List<String> problems) {
    super(String.join("\n", problems));
    this.problems = List.copyOf(problems);
  }

  /** One message a faulty line: {@code file:line: what is wrong; what to do}. */
  public List<String> problems() {
    return problems;
  }
}
