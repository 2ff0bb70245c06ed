package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A fertilizer as weighed out.
 *
 * @param id as written in recipes
 * @param title as shown
 * @param perGram mol in a gram of it
 * @param nutrients grams of element in a gram of it
 * @param density g/mL of a liquid; NaN of a solid
 * @param salt the straight salt it is, if it is one
 * @param labelUncertainty relative standard uncertainty of what it adds to conductivity, from
 *     turning a label into ions; 0 for a straight salt
 * @param fit what a weighed and measured sample conducts against the label's prediction; 1 unless
 *     fitted
 * @param mostPerLitre g/L that its maker allows in stock; NaN not stated
 * @param labelRate g/L its label advises, if stated
 * @param notes what was assumed
 */
public record Product(
    String id,
    String title,
    Composition perGram,
    Nutrients nutrients,
    double density,
    Optional<Salt> salt,
    double labelUncertainty,
    double fit,
    double mostPerLitre,
    Optional<Rate> labelRate,
    List<String> notes) {

  /**
   * A range of rates, g/L.
   *
   * @param low at least above 0
   * @param high not below low
   */
  public record Rate(double low, double high) {}

  public Product {
    notes = List.copyOf(notes);
  }

  /** Whether it is poured rather than weighed. */
  public boolean isLiquid() {
    return !Double.isNaN(density);
  }

  /** Whether it is a straight salt rather than a compound feed. */
  public boolean isStraight() {
    return salt.isPresent();
  }

  /** Calcium, which must not meet a concentrate with sulfate or phosphate. */
  public boolean hasCalcium() {
    return perGram.of(Ion.CA) > 1e-5;
  }

  /** Sulfate or phosphate in more than traces. */
  public boolean hasSulfateOrPhosphate() {
    return perGram.of(Ion.SO4) + perGram.of(Ion.PO4) > 1e-5;
  }

  /** Share of its nitrogen that is urea, which conductivity cannot see; 0 without nitrogen. */
  public double ureaShare() {
    double all = nutrients.nitrogen();
    return all > 0 ? nutrients.of(Nutrient.UREA_N) / all : 0;
  }

  /** mol in a gram, as far as conductivity goes: after fitting to the bag at hand. */
  Composition conducting() {
    return perGram.times(fit);
  }

  boolean isUrea() {
    return perGram.ions().isEmpty() && perGram.neutrals().containsKey(NeutralSolute.UREA);
  }

  /** The same, of which only a share is what it says; the rest is taken as inert. */
  Product withPurity(double share) {
    return new Product(
        id,
        title,
        perGram.times(share),
        nutrients.times(share),
        density,
        salt,
        labelUncertainty,
        fit,
        mostPerLitre,
        labelRate,
        notes);
  }

  Product fitted(double factor, double relativeUncertainty, List<String> more) {
    return new Product(
        id,
        title,
        perGram,
        nutrients,
        density,
        salt,
        relativeUncertainty,
        factor,
        mostPerLitre,
        labelRate,
        Stream.concat(notes.stream(), more.stream()).toList());
  }
}
