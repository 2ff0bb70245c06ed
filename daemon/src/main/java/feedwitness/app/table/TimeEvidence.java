package feedwitness.app.table;

import java.util.Optional;

/** Gathers from the times of a whole file how its dates are written. */
public final class TimeEvidence {
  private long dayFirst;
  private long monthFirst;
  private long doubtful;
  private long epoch;
  private long local;
  private long zoned;
  private String example = "";

  /** Looks at one field; what is no time says nothing. */
  public void add(String field) {
    Optional<TimeText> parsed = TimeText.parse(field);
    if (parsed.isEmpty()) {
      return;
    }
    TimeText text = parsed.get();
    if (text.epochMillis().isPresent()) {
      epoch++;
    } else if (text.offset().isEmpty()) {
      local++;
    } else {
      zoned++;
    }
    if (text.onlyDayFirst()) {
      dayFirst++;
    } else if (text.onlyMonthFirst()) {
      monthFirst++;
    } else if (text.needsOrder()) {
      doubtful++;
      example = field;
    }
  }

  /** The order of day and month; empty if it cannot be told. */
  public Optional<DateOrder> order() {
    if (dayFirst > 0 && monthFirst > 0) {
      return Optional.empty();
    }
    if (monthFirst > 0) {
      return Optional.of(DateOrder.MONTH_FIRST);
    }
    return dayFirst == 0 && doubtful > 0 ? Optional.empty() : Optional.of(DateOrder.DAY_FIRST);
  }

  /** Why it cannot be told, for people. */
  public String doubt() {
    return dayFirst > 0 && monthFirst > 0
        ? "%d dates can only have the day first, %d only the month".formatted(dayFirst, monthFirst)
        : "'%s' may have the day or the month first".formatted(example);
  }

  /** Whether any time needs a time zone. */
  public boolean needsZone() {
    return local > 0;
  }

  /** For people. */
  public String words() {
    if (epoch + local + zoned == 0) {
      return "none that can be read";
    }
    StringBuilder words = new StringBuilder();
    append(words, epoch, "seconds or milliseconds since 1970");
    append(words, zoned, "date and time with their own offset");
    append(words, local, "local date and time");
    return words.toString();
  }

  private static void append(StringBuilder words, long count, String what) {
    if (count > 0) {
      words.append(words.isEmpty() ? "" : ", ").append(what);
    }
  }
}
