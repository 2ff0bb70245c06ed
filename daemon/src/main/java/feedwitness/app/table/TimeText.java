package feedwitness.app.table;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The parts of a time as a table has it: seconds or milliseconds since 1970, or a date with or
 * without a time of day.
 *
 * @param epochMillis if it is a number; then all else is 0
 * @param first of the date as written, {@code second}, {@code third} likewise
 * @param yearFirst whether {@code first} is the year
 * @param nanoOfDay time of day, 24-hour; 0 if only a date
 * @param offset such as Z or +01:00; empty if none
 */
record TimeText(
    Optional<Long> epochMillis,
    int first,
    int second,
    int third,
    boolean yearFirst,
    long nanoOfDay,
    String offset) {
  private static final Pattern SECONDS = Pattern.compile("(\\d{8,10})(?:[.,](\\d{1,9}))?");
  private static final Pattern MILLIS = Pattern.compile("\\d{12,13}");
  private static final Pattern DATE =
      Pattern.compile(
          "(\\d{1,4})([-/.])(\\d{1,2})\\2(\\d{1,4})"
              + "(?:(?:T|,? {1,3})(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:[.,](\\d{1,9}))?)?"
              + " ?(?:([AaPp])\\.?[Mm]\\.?)? ?(Z|[+-]\\d{2}:?\\d{2})?)?");
  private static final int LONGEST = 60;

  /** Empty if it is no time. */
  static Optional<TimeText> parse(String text) {
    if (text.length() > LONGEST) {
      return Optional.empty();
    }
    if (MILLIS.matcher(text).matches()) {
      return Optional.of(epoch(Long.parseLong(text)));
    }
    Matcher seconds = SECONDS.matcher(text);
    if (seconds.matches()) {
      String fraction = seconds.group(2) == null ? "" : seconds.group(2);
      return Optional.of(
          epoch(
              Long.parseLong(seconds.group(1)) * 1_000
                  + Long.parseLong((fraction + "000").substring(0, 3))));
    }
    Matcher date = DATE.matcher(text);
    return date.matches() ? date(date) : Optional.empty();
  }

  private static TimeText epoch(long millis) {
    return new TimeText(Optional.of(millis), 0, 0, 0, false, 0, "");
  }

  private static Optional<TimeText> date(Matcher date) {
    boolean yearFirst = date.group(1).length() == 4;
    if (date.group(1).length() == 3 || date.group(4).length() == 3) {
      return Optional.empty();
    }
    long nanos = date.group(5) == null ? 0 : nanoOfDay(date);
    if (nanos < 0) {
      return Optional.empty();
    }
    return Optional.of(
        new TimeText(
            Optional.empty(),
            Integer.parseInt(date.group(1)),
            Integer.parseInt(date.group(3)),
            Integer.parseInt(date.group(4)),
            yearFirst,
            nanos,
            date.group(10) == null ? "" : date.group(10)));
  }

  /** Negative if there is no such time of day. */
  private static long nanoOfDay(Matcher date) {
    int hour = Integer.parseInt(date.group(5));
    int minute = Integer.parseInt(date.group(6));
    int second = date.group(7) == null ? 0 : Integer.parseInt(date.group(7));
    String fraction = date.group(8) == null ? "" : date.group(8);
    if (date.group(9) != null) {
      if (hour < 1 || hour > 12) {
        return -1;
      }
      boolean afternoon = date.group(9).toLowerCase(Locale.ROOT).equals("p");
      hour = hour % 12 + (afternoon ? 12 : 0);
    }
    if (hour > 23 || minute > 59 || second > 59) {
      return -1;
    }
    long nanos = Long.parseLong((fraction + "000000000").substring(0, 9));
    return ((hour * 60L + minute) * 60 + second) * 1_000_000_000 + nanos;
  }

  /** Day and month of a date that does not begin with its year, as they stand. */
  boolean onlyDayFirst() {
    return epochMillis.isEmpty() && !yearFirst && first > 12 && second <= 12;
  }

  boolean onlyMonthFirst() {
    return epochMillis.isEmpty() && !yearFirst && second > 12 && first <= 12;
  }

  boolean needsOrder() {
    return epochMillis.isEmpty() && !yearFirst && first != second;
  }
}
