package feedwitness.settings;

import feedwitness.feed.FeedStock;
import feedwitness.feed.Mixer;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** What a feed line lets down: by a recipe, by a measured dilution of the stock, or by both. */
final class FeedStockReader {
  static final String RECIPE = "recipe";
  static final String READS = "stock-reads";
  static final String DILUTION = "stock-dilution";
  static final String WATER = "source-strength";

  /** 10 mL made up to a litre. */
  private static final double USUAL_DILUTION = 100;

  private static final double LEAST_DILUTION = 5;
  private static final double MOST_DILUTION = 10_000;

  private static final Found NONE = new Found(Optional.empty());

  private FeedStockReader() {}

  /** What was said without a fault; empty if nothing. */
  record Found(Optional<FeedStock> stock) {}

  /** Empty if it is faulty. */
  static Optional<Found> read(
      Section section, Optional<feedwitness.site.Mixer> mixer, Optional<Double> water) {
    Optional<Double> reads =
        section.parsed(
            READS,
            ConductivityText::parseMilliSiemensPerCm,
            "write number and unit, for example \"1.30 mS/cm\"");
    Optional<Double> dilution = section.number(DILUTION, LEAST_DILUTION, MOST_DILUTION, "");
    boolean faulty =
        (section.has(READS) && reads.isEmpty()) || (section.has(DILUTION) && dilution.isEmpty());
    if (section.has(DILUTION) && !section.has(READS)) {
      section.problem(
          DILUTION,
          "'%s' is given without '%s'".formatted(DILUTION, READS),
          "write what the stock, let down with source water, reads at 25 °C");
      return Optional.empty();
    }
    if (section.has(READS)
        && mixer.filter(each -> !(each instanceof feedwitness.site.Mixer.Injector)).isPresent()) {
      section.problem(
          READS,
          "'%s' says how strong the stock is, but not how far it is let down".formatted(READS),
          "write ratio, the litres of feed from one litre of stock");
      return Optional.empty();
    }
    if (section.has(RECIPE)) {
      return recipe(section)
          .filter(feed -> !faulty)
          .flatMap(feed -> measured(section, feed, reads, dilution));
    }
    if (faulty) {
      return Optional.empty();
    }
    return reads.isEmpty()
        ? Optional.of(NONE)
        : withoutRecipe(section, water, reads.get(), dilution);
  }

  private static Optional<FeedStock> recipe(Section section) {
    return section
        .parsed(
            RECIPE,
            text -> path(section, text),
            "write the name of a recipe beside the configuration, such as \"growing-on.toml\"")
        .flatMap(file -> RecipeFile.feed(file, new Mixer(), section.source().problems()));
  }

  private static Path path(Section section, String text) {
    try {
      Path file = section.source().file().toAbsolutePath().resolveSibling(text).normalize();
      if (!Files.isRegularFile(file)) {
        throw new IllegalArgumentException("'%s' is not there: no file %s".formatted(text, file));
      }
      return file;
    } catch (InvalidPathException e) {
      throw new IllegalArgumentException("'%s' cannot be a path".formatted(text), e);
    }
  }

  private static Optional<Found> measured(
      Section section, FeedStock feed, Optional<Double> reads, Optional<Double> dilution) {
    if (reads.isEmpty()) {
      return Optional.of(new Found(Optional.of(feed)));
    }
    return section
        .made(READS, () -> feed.measured(reads.get(), dilution.orElse(USUAL_DILUTION)))
        .map(stock -> new Found(Optional.of(stock)));
  }

  private static Optional<Found> withoutRecipe(
      Section section, Optional<Double> water, double reads, Optional<Double> dilution) {
    section.missing(
        WATER, "the stock was let down with source water: write what that has, \"0.46 mS/cm\"");
    return water.flatMap(
        strength ->
            section
                .made(
                    READS,
                    () ->
                        new Mixer().measuredStock(strength, reads, dilution.orElse(USUAL_DILUTION)))
                .map(stock -> new Found(Optional.of(stock))));
  }
}
