package feedwitness.publish;

import feedwitness.quantity.PointName;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is to be exported, and how.
 *
 * @param points empty for all
 * @param from inclusive; empty for the beginning
 * @param to exclusive; empty for the end
 */
public record ExportQuery(
    List<PointName> points, Optional<Instant> from, Optional<Instant> to, CsvLayout layout) {
  static final Map<String, Character> SEPARATORS =
      Map.of("comma", ',', "semicolon", ';', "tab", '\t');
  private static final Set<String> KNOWN =
      Set.of("point", "from", "to", "zone", "separator", "decimal");

  public ExportQuery {
    points = List.copyOf(points);
  }

  /**
   * Reads the parameters of an address.
   *
   * @throws ProblemException status 400 naming every parameter at fault
   */
  static ExportQuery read(
      Map<String, List<String>> parameters, List<PointName> there, ZoneId ownZone) {
    List<Problem.FieldError> errors = new ArrayList<>();
    for (String name : parameters.keySet()) {
      if (!KNOWN.contains(name)) {
        fault(
            errors,
            Quoted.plain(name),
            "there is no parameter %s; there are point, from, to, zone, separator and decimal"
                .formatted(Quoted.of(name)));
      }
    }
    List<PointName> points = points(parameters.getOrDefault("point", List.of()), there, errors);
    Optional<Instant> from = time("from", parameters, errors);
    Optional<Instant> to = time("to", parameters, errors);
    if (from.isPresent() && to.isPresent() && !from.get().isBefore(to.get())) {
      fault(errors, "from", "from is not before to; give a start that lies before the end");
    }
    @Nullable CsvLayout layout = layout(parameters, ownZone, errors);
    if (layout == null || !errors.isEmpty()) {
      throw new Problem(400, errors.get(0).message(), errors).exception();
    }
    return new ExportQuery(points, from, to, layout);
  }

  private static List<PointName> points(
      List<String> wanted, List<PointName> there, List<Problem.FieldError> errors) {
    List<PointName> points = new ArrayList<>();
    for (String name : wanted) {
      Optional<PointName> known =
          there.stream().filter(point -> point.text().equals(name)).findFirst();
      known.ifPresentOrElse(
          points::add, () -> fault(errors, "point", noSuchPoint(Quoted.of(name), there)));
    }
    return points;
  }

  /** For people. */
  public static String noSuchPoint(String quoted, List<PointName> there) {
    return there.isEmpty()
        ? "there is no point %s; nothing is recorded yet".formatted(quoted)
        : "there is no point %s; there are: %s"
            .formatted(quoted, String.join(", ", there.stream().map(PointName::text).toList()));
  }

  private static @Nullable CsvLayout layout(
      Map<String, List<String>> parameters, ZoneId ownZone, List<Problem.FieldError> errors) {
    String separator = single("separator", parameters, errors).orElse("comma");
    String decimal = single("decimal", parameters, errors).orElse("point");
    if (!SEPARATORS.containsKey(separator)) {
      fault(errors, "separator", "separator is not comma, semicolon or tab");
    }
    if (!decimal.equals("point") && !decimal.equals("comma")) {
      fault(errors, "decimal", "decimal is not point or comma");
    }
    ZoneId zone = ownZone;
    Optional<String> named = single("zone", parameters, errors);
    if (named.isPresent()) {
      try {
        zone = ZoneId.of(named.get());
      } catch (DateTimeException e) {
        fault(
            errors,
            "zone",
            "zone %s is no time zone such as Europe/London or UTC"
                .formatted(Quoted.of(named.get())));
      }
    }
    if (!errors.isEmpty()) {
      return null;
    }
    try {
      return new CsvLayout(zone, SEPARATORS.getOrDefault(separator, ','), decimal.equals("comma"));
    } catch (IllegalArgumentException e) {
      fault(errors, "decimal", String.valueOf(e.getMessage()));
      return null;
    }
  }

  private static Optional<Instant> time(
      String name, Map<String, List<String>> parameters, List<Problem.FieldError> errors) {
    Optional<String> text = single(name, parameters, errors);
    try {
      return text.map(t -> OffsetDateTime.parse(t).toInstant());
    } catch (DateTimeException e) {
      fault(
          errors,
          name,
          "%s %s is no time such as 2026-06-01T08:00:00Z (write a + as %%2B)"
              .formatted(name, Quoted.of(text.orElse(""))));
      return Optional.empty();
    }
  }

  private static Optional<String> single(
      String name, Map<String, List<String>> parameters, List<Problem.FieldError> errors) {
    List<String> values = parameters.getOrDefault(name, List.of());
    if (values.size() > 1) {
      fault(errors, name, name + " is given more than once; give it once");
    }
    return values.stream().findFirst();
  }

  private static void fault(List<Problem.FieldError> errors, String field, String message) {
    errors.add(new Problem.FieldError(field, message));
  }
}
