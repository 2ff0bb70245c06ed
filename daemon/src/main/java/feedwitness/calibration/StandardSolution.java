package feedwitness.calibration;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One bottle on the shelf.
 *
 * @param name short, unique on the shelf, for example {@code low}
 * @param course what it conducts
 * @param lot as printed on the bottle; empty if unknown
 * @param certificatePercent what the bottle's certificate states, ± % of the nominal value,
 *     expanded (twice the standard uncertainty), above 0 to 10
 * @param opened the day on which it was opened
 * @param expires the last good day as printed
 */
public record StandardSolution(
    String name,
    StandardCourse course,
    String lot,
    double certificatePercent,
    Optional<LocalDate> opened,
    Optional<LocalDate> expires) {
  /** Where the bottle states nothing, ± %. */
  public static final double USUAL_CERTIFICATE_PERCENT = 1;

  private static final int GOOD_DAYS_OPEN = 180;

  /** Weak standards take up carbon dioxide: their conductivity rises in the open bottle. */
  private static final int WEAK_GOOD_DAYS_OPEN = 60;

  private static final double WEAK_BELOW_MILLISIEMENS_PER_CM = 0.2;

  /**
   * Checks name, certificate and dates.
   *
   * @throws IllegalArgumentException naming what is wrong and what to do
   */
  public StandardSolution {
    if (!name.matches("[a-z][a-z0-9_-]{0,31}")) {
      throw new IllegalArgumentException(
          "name '%s' of a standard is not 1 to 32 of a-z, 0-9, - and _, a letter first; give it a short name such as low"
              .formatted(name));
    }
    if (!(certificatePercent > 0 && certificatePercent <= 10)) {
      throw new IllegalArgumentException(
          "certificate ± %s %% of standard '%s' is not above 0 and at most 10 %%; copy it from the bottle"
              .formatted(certificatePercent, name));
    }
    if (opened.isPresent() && expires.isPresent() && opened.get().isAfter(expires.get())) {
      throw new IllegalArgumentException(
          "standard '%s' was opened on %s, after it expired on %s; check both dates"
              .formatted(name, opened.get(), expires.get()));
    }
  }

  /** mS/cm at 25 °C. */
  public double nominal() {
    return course.at25();
  }

  /** For people: {@code KCl 0.01 mol/L, 1.413 mS/cm, lot QE-A07}. */
  public String title() {
    String what = "%s, %s mS/cm".formatted(course.label(), Figure.of(nominal(), 4));
    return lot.isEmpty() ? what : what + ", lot " + lot;
  }

  /** What speaks against using it today; empty if nothing does. */
  public List<String> warnings(LocalDate today) {
    List<String> warnings = new ArrayList<>();
    expires
        .filter(today::isAfter)
        .ifPresent(
            day ->
                warnings.add(
                    "%s expired on %s, %d days ago; open a fresh bottle"
                        .formatted(title(), day, ChronoUnit.DAYS.between(day, today))));
    opened.ifPresent(day -> warnOfOpening(day, today, warnings));
    return warnings;
  }

  private void warnOfOpening(LocalDate day, LocalDate today, List<String> warnings) {
    long open = ChronoUnit.DAYS.between(day, today);
    int good = nominal() < WEAK_BELOW_MILLISIEMENS_PER_CM ? WEAK_GOOD_DAYS_OPEN : GOOD_DAYS_OPEN;
    if (open < 0) {
      warnings.add(
          "%s is noted as opened on %s, which is in the future; correct that date or the clock"
              .formatted(title(), day));
    } else if (open > good) {
      warnings.add(
          "%s has been open for %d days, longer than %d; evaporation makes it stronger, open a fresh bottle"
              .formatted(title(), open, good));
    }
  }
}
