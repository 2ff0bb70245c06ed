package feedwitness.simulate;

import feedwitness.simulate.Schedule.Entry;
import feedwitness.simulate.Schedule.When;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads a nursery file line by line and gathers every fault before it gives up. */
final class ScheduleReader {
  private final String name;
  private final List<String> problems = new ArrayList<>();
  private final List<Entry> entries = new ArrayList<>();
  private final Map<Parameter, Double> set = new EnumMap<>(Parameter.class);

  ScheduleReader(String name) {
    this.name = name;
  }

  Schedule read(String text) {
    int number = 0;
    for (String line : text.lines().toList()) {
      number++;
      int comment = line.indexOf('#');
      String plain = (comment < 0 ? line : line.substring(0, comment)).strip();
      if (!plain.isEmpty()) {
        try {
          line(new ArrayDeque<>(Arrays.asList(plain.split("\\s+"))));
        } catch (IllegalArgumentException e) {
          problems.add("%s:%d: %s".formatted(name, number, e.getMessage()));
        }
      }
    }
    if (!problems.isEmpty()) {
      throw new ScheduleException(problems);
    }
    return new Schedule(new Parameters(set), entries);
  }

  private void line(Deque<String> words) {
    if ("set".equals(words.peek())) {
      words.remove();
      parameter(words);
    } else {
      When when = when(words);
      entries.add(new Entry(when, DeedReader.read(words)));
    }
  }

  private void parameter(Deque<String> words) {
    if (words.size() != 2) {
      throw new IllegalArgumentException(
          "'set' needs a name and a number; write for example: set source-strength 0.46");
    }
    String which = words.remove();
    Parameter parameter =
        Parameter.named(which)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "'%s' cannot be set; use one of %s".formatted(which, Parameter.names())));
    String written = words.remove();
    double value = DeedReader.number(written, which);
    if (!parameter.accepts(value)) {
      throw new IllegalArgumentException(
          "%s %s is outside %s; choose a number within"
              .formatted(which, written, parameter.range()));
    }
    set.put(parameter, value);
  }

  private static When when(Deque<String> words) {
    String first = words.remove();
    if (first.toUpperCase(Locale.ROOT).startsWith("T+")) {
      return new When.Once(DeedReader.duration(first.substring(1)));
    }
    DayOfWeek day = day(first);
    String time = words.isEmpty() ? "" : words.remove();
    try {
      return new When.Weekly(day, LocalTime.parse(time));
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          "'%s' after %s is not a time of day; write it as 07:30".formatted(time, first), e);
    }
  }

  private static DayOfWeek day(String word) {
    for (DayOfWeek day : DayOfWeek.values()) {
      if (day.name().substring(0, 3).equals(word.toUpperCase(Locale.ROOT))) {
        return day;
      }
    }
    throw new IllegalArgumentException(
        ("'%s' is no day; begin with MON, TUE, WED, THU, FRI, SAT or SUN and a time, with T+90s for"
                + " so long after the start, or with set")
            .formatted(word));
  }
}
