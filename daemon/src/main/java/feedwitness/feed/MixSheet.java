package feedwitness.feed;

import java.util.List;
import java.util.Optional;

/**
 * A mixing sheet: everything a page or a printed sheet shows. NaN is a number that is not known or
 * does not apply. Conductivities in mS/cm, at 25 °C unless named otherwise.
 *
 * @param frequency how often the feed is given, in words
 * @param binding what could not be met, and which limit holds it
 * @param notes what was assumed, what deserves a second look
 * @param cautions where work can hurt someone or something
 */
public record MixSheet(
    String title,
    String frequency,
    Water water,
    Strength strength,
    Reading meter,
    Volume volume,
    List<Weighing> weigh,
    List<NutrientLine> nutrients,
    List<Step> steps,
    Optional<Acid> acid,
    List<Stock> stocks,
    List<CurvePoint> curve,
    List<String> binding,
    List<String> notes,
    List<String> cautions) {

  public MixSheet {
    weigh = List.copyOf(weigh);
    nutrients = List.copyOf(nutrients);
    steps = List.copyOf(steps);
    stocks = List.copyOf(stocks);
    curve = List.copyOf(curve);
    binding = List.copyOf(binding);
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
  }

  /**
   * The water.
   *
   * @param imbalancePercent cations less anions of the report, percent of their sum
   * @param alkalinity mmol/L, before acid
   */
  public record Water(
      double strength,
      double measured,
      double predicted,
      double imbalancePercent,
      double alkalinity) {}

  /**
   * The strength of the feed as weighed out.
   *
   * @param uncertainty standard uncertainty of the total, mS/cm
   * @param ureaPercent share of the feed's nitrogen that conductivity cannot see
   */
  public record Strength(
      double wanted,
      double total,
      double added,
      double water,
      double uncertainty,
      double ureaPercent) {}

  /**
   * What the meter will show.
   *
   * @param shown in {@code unit}
   * @param text the same with its unit and how it compensates
   */
  public record Reading(
      double shown,
      String unit,
      double celsius,
      boolean compensates,
      double percentPerKelvin,
      String text) {}

  /** How much feed; pots 0 where not asked. */
  public record Volume(double litres, double pots, double perPotLitres, String text) {}

  /**
   * One product on the scale.
   *
   * @param exactGrams before rounding to the scale
   * @param text grams rounded, in the units asked for
   * @param millilitres of a liquid
   * @param spoons level spoons, to the nearest quarter
   * @param stock which stock it goes into; empty for the tank
   */
  public record Weighing(
      String product,
      String title,
      double gramsPerLitre,
      double exactGrams,
      double grams,
      String text,
      double millilitres,
      double spoons,
      String stock) {}

  /**
   * A nutrient in the feed, mg/L as element, and as oxide beside it.
   *
   * @param wanted mg/L, NaN if nothing was
   * @param ceiling whether {@code wanted} is one
   * @param conducts whether conductivity sees it
   */
  public record NutrientLine(
      String symbol,
      double fromWater,
      double fromFeed,
      double total,
      String oxide,
      double totalOxide,
      double wanted,
      boolean ceiling,
      boolean conducts) {}

  /**
   * One step of the work, and what may then be read.
   *
   * @param atTank mS/cm uncompensated at the tank's temperature; NaN where nothing is to be read
   * @param at25 mS/cm at 25 °C
   * @param shown what the meter at hand shows, with its unit; empty where nothing
   */
  public record Step(int number, String text, double atTank, double at25, String shown) {}

  /** Acid for the water. */
  public record Acid(
      String kind, double millilitres, double neutralised, double alkalinityLeft, String text) {}

  /**
   * A concentrate.
   *
   * @param makes litres of feed from one litre
   * @param percent the same in percent
   * @param partsWater parts of water to one of stock
   * @param dial setting of the siphon mixer, NaN without one
   * @param servesLitres feed that a fill makes
   * @param servesPots pots that a fill waters; 0 unless asked
   * @param saturation share of what the water holds at the coldest night, 1 is full
   * @param limiting which salt falls out first
   * @param coolsBy kelvin that dissolving takes
   * @param check a measured dilution and what it should read
   */
  public record Stock(
      String name,
      double litres,
      double makes,
      double percent,
      double partsWater,
      double dial,
      double servesLitres,
      double servesPots,
      double saturation,
      String limiting,
      double coolsBy,
      String check) {}

  /** Strength against grams in a litre, all products together. */
  public record CurvePoint(double gramsPerLitre, double strength) {}
}
