package feedwitness.publish;

import feedwitness.quantity.PointName;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What of a course is asked for.
 *
 * @param from inclusive
 * @param to exclusive, after {@code from}
 * @param buckets at most so many, 1 to 5000
 */
record CourseQuery(PointName point, Instant from, Instant to, int buckets) {
  static final int MOST = 5000;
  static final int DEFAULT = 500;
  static final Duration SPAN = Duration.ofHours(1);

  private static final List<String> KNOWN = List.of("from", "to", "points");
  private static final Instant EARLIEST = Instant.parse("1970-01-01T00:00:00Z");
  private static final Instant LATEST = Instant.parse("9999-01-01T00:00:00Z");

  /**
   * Reads the parameters of an address.
   *
   * @throws ProblemException status 400 naming every parameter at fault
   */
  static CourseQuery read(PointName point, Map<String, List<String>> parameters, Instant now) {
    List<Problem.FieldError> errors = new ArrayList<>();
    refuseUnknown(parameters, KNOWN, errors);
    Instant to = time("to", parameters, errors).orElse(now);
    Instant from = time("from", parameters, errors).orElse(to.minus(SPAN));
    int buckets = buckets(parameters, errors);
    if (errors.isEmpty() && !from.isBefore(to)) {
      errors.add(
          new Problem.FieldError(
              "from",
              "from %s is not before to %s; give a start that lies before the end"
                  .formatted(Numbers.time(from), Numbers.time(to))));
    }
    if (!errors.isEmpty()) {
      throw new Problem(400, errors.get(0).message(), errors).exception();
    }
    return new CourseQuery(point, from, to, buckets);
  }

  /** Adds an error for each parameter that is not among the known. */
  static void refuseUnknown(
      Map<String, List<String>> parameters, List<String> known, List<Problem.FieldError> errors) {
    String last = known.get(known.size() - 1);
    String there =
        known.size() == 1
            ? "is " + last
            : "are " + String.join(", ", known.subList(0, known.size() - 1)) + " and " + last;
    parameters.keySet().stream()
        .filter(name -> !known.contains(name))
        .forEach(
            name ->
                errors.add(
                    new Problem.FieldError(
                        Quoted.plain(name),
                        "there is no parameter %s; there %s".formatted(Quoted.of(name), there))));
  }

  /** A time parameter; empty if it is not given, or cannot be read, which adds an error. */
  static Optional<Instant> time(
      String name, Map<String, List<String>> parameters, List<Problem.FieldError> errors) {
    Optional<String> text = single(name, parameters, errors);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      Instant time = OffsetDateTime.parse(text.get()).toInstant();
      if (!time.isBefore(EARLIEST) && time.isBefore(LATEST)) {
        return Optional.of(time);
      }
      errors.add(
          new Problem.FieldError(
              name, "%s %s is outside the years 1970 to 9998".formatted(name, text.get())));
    } catch (DateTimeException e) {
      errors.add(
          new Problem.FieldError(
              name,
              "%s %s is no time such as 2026-06-01T08:00:00Z (write a + as %%2B)"
                  .formatted(name, Quoted.of(text.get()))));
    }
    return Optional.empty();
  }

  private static int buckets(
      Map<String, List<String>> parameters, List<Problem.FieldError> errors) {
    Optional<String> text = single("points", parameters, errors);
    if (text.isEmpty()) {
      return DEFAULT;
    }
    if (text.get().matches("\\d{1,4}")) {
      int number = Integer.parseInt(text.get());
      if (number >= 1 && number <= MOST) {
        return number;
      }
    }
    errors.add(
        new Problem.FieldError(
            "points",
            "points %s is not a whole number from 1 to %d".formatted(Quoted.of(text.get()), MOST)));
    return DEFAULT;
  }

  private static Optional<String> single(
      String name, Map<String, List<String>> parameters, List<Problem.FieldError> errors) {
    List<String> values = parameters.getOrDefault(name, List.of());
    if (values.size() > 1) {
      errors.add(new Problem.FieldError(name, name + " is given more than once; give it once"));
    }
    return values.size() == 1 ? Optional.of(values.get(0)) : Optional.empty();
  }
}
