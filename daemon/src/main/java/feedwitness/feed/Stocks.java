package feedwitness.feed;

import feedwitness.solution.Composition;
import java.util.ArrayList;
import java.util.List;

/** Parts the doses into one or two stocks, and judges each. */
final class Stocks {
  static final String ONE = "stock";
  static final String CALCIUM = "calcium stock";
  static final String OTHER = "sulfate-phosphate stock";

  /** A stock this full has no margin for a colder night or an uneven scale. */
  private static final double FULL = 0.9;

  private static final double MARGIN = 0.9;
  private static final double HEAT_OF_WATER = 4.18;
  private static final double CHECK_MILLILITRES = 10;
  private static final double COOLS = 4;

  private final MixRequest request;
  private final StockWish wish;
  private final Foresight foresight;
  private final List<Fault> faults = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  Stocks(MixRequest request, StockWish wish, Foresight foresight) {
    this.request = request;
    this.wish = wish;
    this.foresight = foresight;
  }

  List<Fault> faults() {
    return faults;
  }

  List<String> notes() {
    return notes;
  }

  /** Names of the stocks there are. */
  List<String> names() {
    return wish.count() == 1 ? List.of(ONE) : List.of(CALCIUM, OTHER);
  }

  /** Which stock a product belongs in. */
  String of(Product product) {
    if (wish.count() == 1) {
      return ONE;
    }
    boolean calcium = product.hasCalcium();
    boolean chelate = product.id().equals("iron-edta");
    boolean other = product.hasSulfateOrPhosphate();
    return calcium || chelate || !other ? CALCIUM : OTHER;
  }

  List<MixSheet.Stock> sheets(List<Dose> doses) {
    List<MixSheet.Stock> sheets = new ArrayList<>();
    for (String name : names()) {
      List<Dose> own =
          doses.stream()
              .filter(d -> of(d.product()).equals(name) && d.gramsPerLitre() > 0)
              .map(d -> d.times(wish.makes()))
              .toList();
      if (!own.isEmpty()) {
        sheets.add(sheet(name, own));
      }
    }
    return sheets;
  }

  Composition perLitre(List<Dose> inStock) {
    return new Blend(request.water(), request.acid(), inStock).perLitre();
  }

  private MixSheet.Stock sheet(String name, List<Dose> inStock) {
    Composition perLitre = perLitre(inStock);
    Saturation saturation = Saturation.of(inStock, perLitre, wish.coldestNight(), foresight);
    if (saturation.share() > 1) {
      refuse(name, inStock, saturation);
    } else if (saturation.share() > FULL) {
      notes.add(
          "%s: %s is at %s %% of what the water holds at %s; a colder night drops it"
              .formatted(
                  name,
                  saturation.limiting(),
                  Text.fixed(100 * saturation.share(), 0),
                  request.units().temperature(wish.coldestNight())));
    }
    double cools = cools(inStock, foresight.waterPerLitre(perLitre));
    if (cools > COOLS) {
      notes.add(
          "%s: dissolving cools by about %s K; use lukewarm water, stir, wait until it is clear"
              .formatted(name, Text.fixed(cools, 0)));
    }
    double serves = wish.litres() * wish.makes();
    return new MixSheet.Stock(
        name,
        wish.litres(),
        wish.makes(),
        100 / wish.makes(),
        wish.makes() - 1,
        wish.dial().settingFor(wish.makes()),
        serves,
        request.perPot() > 0 ? Math.floor(serves / request.perPot()) : 0,
        saturation.share(),
        saturation.limiting(),
        cools,
        check(name, inStock));
  }

  private void refuse(String name, List<Dose> inStock, Saturation saturation) {
    double safe = MARGIN / saturation.share();
    StringBuilder grams = new StringBuilder();
    for (Dose dose : inStock) {
      grams
          .append(grams.isEmpty() ? "" : ", ")
          .append(dose.product().id())
          .append(' ')
          .append(
              request.units().mass(dose.gramsPerLitre() * wish.litres() * safe, request.scale()));
    }
    faults.add(
        new Fault(
            "stock.makes",
            Text.plain(wish.makes()),
            "%s: %s would fall out at %s, %s times what the water holds"
                .formatted(
                    name,
                    saturation.limiting(),
                    request.units().temperature(wish.coldestNight()),
                    Text.figures(saturation.share(), 2)),
            "safe in %s: %s; then one litre makes %s L"
                .formatted(
                    request.units().volume(wish.litres()),
                    grams,
                    Text.figures(Math.floor(wish.makes() * safe * 10) / 10, 3))));
  }

  /** Kelvin, from the heats of the straight salts in it; compound feeds have none on record. */
  private static double cools(List<Dose> inStock, double waterPerLitre) {
    double joules = 0;
    for (Dose dose : inStock) {
      joules +=
          dose.product()
              .salt()
              .filter(salt -> !Double.isNaN(salt.heat()))
              .map(salt -> 1000 * salt.heat() / salt.molarMass() * dose.gramsPerLitre())
              .orElse(0.0);
    }
    return joules / (1000 * HEAT_OF_WATER * waterPerLitre);
  }

  /** A stock is too strong for most meters: 10 mL of it in a litre is not. */
  private String check(String name, List<Dose> inStock) {
    return "%s: 10 mL of it made up to 1 L with the same water reads %s mS/cm at 25 °C"
        .formatted(name, Text.fixed(strength(inStock, CHECK_MILLILITRES / 1000), 2));
  }

  /** mS/cm at 25 °C of a stock let down to a share of it, with the water it is used with. */
  double diluted(String name, List<Dose> doses, double share) {
    return strength(
        doses.stream()
            .filter(d -> of(d.product()).equals(name))
            .map(d -> d.times(wish.makes()))
            .toList(),
        share);
  }

  private double strength(List<Dose> inStock, double share) {
    Composition diluted = request.acid().treated(request.water().perLitre());
    for (Dose dose : inStock) {
      diluted = diluted.plus(share * dose.gramsPerLitre(), dose.product().conducting());
    }
    return foresight.at25(diluted) + request.water().offset();
  }
}
