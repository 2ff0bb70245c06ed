package feedwitness.settings;

import feedwitness.quantity.PointName;
import java.util.Optional;

/** The short name by which a table is known, and the title that people read instead. */
final class NameReader {
  private NameReader() {}

  /** Empty, and told, if it is no name. */
  static Optional<PointName> name(Section section) {
    return section.parsed(
        "name",
        PointName::new,
        "use 1 to 32 lower-case letters, digits, - and _, a letter first; the title is free");
  }

  /** The name itself where there is no title; empty, and told, if it is no title. */
  static Optional<String> title(Section section, Optional<PointName> name, int longest) {
    return section.has("title")
        ? ConfigReader.line(section, "title", longest)
        : name.map(PointName::text);
  }
}
