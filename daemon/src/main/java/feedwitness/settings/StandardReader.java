package feedwitness.settings;

import feedwitness.calibration.StandardCourse;
import feedwitness.calibration.StandardSolution;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the {@code [[standard]]} tables: bottles on the shelf. */
final class StandardReader {
  static final Set<String> KEYS =
      Set.of("name", "solution", "table", "lot", "certificate-percent", "opened", "expires");
  private static final int LONGEST = 60;
  private static final int MOST_ROWS = 60;
  private static final String ROW_REMEDY = "write each row as \"20 °C: 1278 µS/cm\"";
  private static final Pattern ROW =
      Pattern.compile("([0-9]{1,2}(?:\\.[0-9]{1,3})?) ?°? ?C ?[:=] ?(\\S.*)");

  private StandardReader() {}

  /** Those without fault; faults are noted. */
  static List<StandardSolution> read(Section root) {
    List<StandardSolution> standards = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Section section : root.tables("standard", KEYS)) {
      Optional<StandardSolution> standard = standard(section);
      if (standard.isPresent() && !names.add(standard.get().name())) {
        section.problem(
            "name",
            "another standard is called '%s'".formatted(standard.get().name()),
            "give each bottle a name of its own");
      } else {
        standard.ifPresent(standards::add);
      }
    }
    return standards;
  }

  private static Optional<StandardSolution> standard(Section section) {
    section.missing("name", "give the bottle a short name, for example name = \"low\"");
    section.missing("solution", "say what is in it, for example solution = \"KCl 0.01 mol/L\"");
    Optional<String> name = section.text("name");
    Optional<StandardCourse> course =
        section.has("table")
            ? table(section)
            : section.text("solution").flatMap(s -> kcl(section, s));
    Optional<String> lot =
        ProfileReader.or(section, "lot", "", ConfigReader.line(section, "lot", LONGEST));
    Optional<Double> certificate =
        ProfileReader.or(
            section,
            "certificate-percent",
            StandardSolution.USUAL_CERTIFICATE_PERCENT,
            section.number("certificate-percent", 0.01, 10, "%"));
    Optional<LocalDate> opened = section.date("opened");
    Optional<LocalDate> expires = section.date("expires");
    if (name.isEmpty() || course.isEmpty() || lot.isEmpty() || certificate.isEmpty()) {
      return Optional.empty();
    }
    return section.made(
        opened.isPresent() && expires.isPresent() && opened.get().isAfter(expires.get())
            ? "opened"
            : "name",
        () ->
            new StandardSolution(
                name.get(), course.get(), lot.get(), certificate.get(), opened, expires));
  }

  private static Optional<StandardCourse> kcl(Section section, String text) {
    Optional<StandardCourse> course = StandardCourse.kcl(text);
    if (course.isEmpty()) {
      List<String> known = StandardCourse.kclLabels();
      section.problem(
          "solution",
          "solution '%s' is none whose course with temperature is known here"
              .formatted(Values.clip(text)),
          Words.nearest(text, known)
              .map("did you mean '%s'?"::formatted)
              .orElse(
                  "write one of %s, or copy the table from the label, table = [\"20 °C: 1278 µS/cm\", \"25 °C: 1413 µS/cm\"]"
                      .formatted(String.join(", ", known))));
    }
    return course;
  }

  private static Optional<StandardCourse> table(Section section) {
    Optional<String> label = ConfigReader.line(section, "solution", LONGEST);
    Optional<List<String>> texts = section.texts("table", 2, MOST_ROWS);
    if (label.isEmpty() || texts.isEmpty()) {
      return Optional.empty();
    }
    List<StandardCourse.Row> rows = new ArrayList<>();
    for (String text : texts.get()) {
      section.entry("table", text, StandardReader::row).ifPresent(rows::add);
    }
    return rows.size() < texts.get().size()
        ? Optional.empty()
        : section.made("table", () -> new StandardCourse.Table(label.get(), rows));
  }

  private static StandardCourse.Row row(String text) {
    Values.refuseDecimalComma(text);
    Matcher row = ROW.matcher(text.strip());
    if (!row.matches()) {
      throw new IllegalArgumentException(
          "'%s' is no temperature with its conductivity; %s"
              .formatted(Values.clip(text), ROW_REMEDY));
    }
    return new StandardCourse.Row(
        Double.parseDouble(row.group(1)), ConductivityText.parseMilliSiemensPerCm(row.group(2)));
  }
}
