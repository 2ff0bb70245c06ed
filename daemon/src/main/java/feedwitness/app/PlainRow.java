package feedwitness.app;

import java.time.LocalDate;

/**
 * Reads the plainest rows quickly: exactly time, conductivity and temperature, a time as {@code
 * 2026-06-02T14:05:00Z}, decimals with a point. Whatever is written otherwise is left to {@link
 * RecordedRow}, which gives the same numbers.
 */
final class PlainRow {
  private static final String HEADER =
      String.join(",", RecordedRow.TIME, RecordedRow.CONDUCTIVITY, RecordedRow.TEMPERATURE);
  private static final int TIME = 20;
  private static final String SHAPE = "dddd-dd-ddTdd:dd:ddZ";
  private static final int MOST_DIGITS = 15;
  private static final double[] TENS = new double[MOST_DIGITS + 1];

  static {
    TENS[0] = 1;
    for (int i = 1; i <= MOST_DIGITS; i++) {
      TENS[i] = TENS[i - 1] * 10;
    }
  }

  private final boolean fits;
  private int day = -1;
  private long dayMillis;
  private long epochMillis;
  private double microSiemensPerCm;
  private double celsius;
  private int at;
  private boolean odd;

  PlainRow(String header) {
    fits = header.strip().equals(HEADER);
  }

  /** Whether the row is of that kind; only then the getters hold its numbers. */
  boolean read(String text) {
    if (!fits || text.length() <= TIME || !time(text) || text.charAt(TIME) != ',') {
      return false;
    }
    odd = false;
    at = TIME + 1;
    microSiemensPerCm = number(text);
    if (odd || at >= text.length() || text.charAt(at) != ',') {
      return false;
    }
    at++;
    celsius = number(text);
    return !odd && at == text.length();
  }

  private boolean time(String text) {
    for (int i = 0; i < TIME; i++) {
      char c = text.charAt(i);
      char shape = SHAPE.charAt(i);
      if (shape == 'd' ? c < '0' || c > '9' : c != shape) {
        return false;
      }
    }
    int year = two(text, 0) * 100 + two(text, 2);
    int month = two(text, 5);
    int date = two(text, 8);
    int hour = two(text, 11);
    int minute = two(text, 14);
    int second = two(text, 17);
    if (month < 1 || month > 12 || date < 1 || !isDate(year, month, date)) {
      return false;
    }
    if (hour > 23 || minute > 59 || second > 59) {
      return false;
    }
    int which = (year * 100 + month) * 100 + date;
    if (which != day) {
      day = which;
      dayMillis = LocalDate.of(year, month, date).toEpochDay() * 86_400_000L;
    }
    epochMillis = dayMillis + ((hour * 60 + minute) * 60L + second) * 1000;
    return true;
  }

  private static boolean isDate(int year, int month, int date) {
    return date <= 28 || date <= LocalDate.of(year, month, 1).lengthOfMonth();
  }

  private static int two(String text, int from) {
    return (text.charAt(from) - '0') * 10 + text.charAt(from + 1) - '0';
  }

  /** Exact up to fifteen digits: whole number and power of ten are, and so is their quotient. */
  private double number(String text) {
    int start = at;
    boolean minus = at < text.length() && text.charAt(at) == '-';
    at += minus ? 1 : 0;
    long whole = 0;
    int digits = 0;
    int decimals = -1;
    for (; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c >= '0' && c <= '9') {
        whole = whole * 10 + (c - '0');
        digits++;
        decimals += decimals >= 0 ? 1 : 0;
      } else if (c == '.' && decimals < 0) {
        decimals = 0;
      } else {
        break;
      }
      if (digits > MOST_DIGITS) {
        odd = true;
        return Double.NaN;
      }
    }
    if (at == start) {
      return Double.NaN; // an empty cell
    }
    odd |= digits == 0;
    double value = whole / TENS[Math.max(0, decimals)];
    return minus ? -value : value;
  }

  long epochMillis() {
    return epochMillis;
  }

  double microSiemensPerCm() {
    return microSiemensPerCm;
  }

  double celsius() {
    return celsius;
  }
}
