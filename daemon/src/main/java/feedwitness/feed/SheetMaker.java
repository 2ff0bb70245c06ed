package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Puts a mixing sheet together from doses. */
final class SheetMaker {
  /** Below this share of a strength, little of it is feed. */
  private static final double LITTLE_FEED = 0.4;

  private static final int CURVE_POINTS = 21;
  private static final double CURVE_REACH = 2;

  private final MixRequest request;
  private final Foresight foresight;
  private final Doses doses;
  private final List<Dose> exact;
  private final List<Dose> weighed;
  private final Scale scale;
  private final Blend blend;
  private final Optional<Stocks> stocks;

  SheetMaker(MixRequest request, Foresight foresight, Doses doses, List<Dose> exact) {
    this.request = request;
    this.foresight = foresight;
    this.doses = doses;
    this.exact = exact;
    scale = new Scale(request);
    weighed = scale.rounded(exact);
    blend = doses.blend(weighed);
    stocks = request.stock().map(wish -> new Stocks(request, wish, foresight));
  }

  /** What was found wrong while making the sheet. */
  List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    if (Double.isNaN(blend.strength(foresight))) {
      faults.add(
          new Fault(
              "use",
              "",
              Foresight.why(foresight.at(blend.perLitre(), Foresight.REFERENCE)),
              "choose smaller rates; a concentrate goes under stock"));
    }
    stocks.ifPresent(s -> faults.addAll(s.faults()));
    return faults;
  }

  MixSheet sheet() {
    List<MixSheet.Stock> concentrates = stocks.map(s -> s.sheets(weighed)).orElse(List.of());
    MixSheet.Strength strength = strength();
    return new MixSheet(
        request.title(),
        request.frequency().words(),
        water(),
        strength,
        reading(blend),
        volume(),
        weigh(),
        new NutrientLines(request, blend).lines(),
        new Steps(request, foresight, stocks, scale).steps(weighed),
        acid(),
        concentrates,
        curve(),
        doses.binding(),
        notes(strength),
        Cautions.of(request, weighed));
  }

  private MixSheet.Water water() {
    SourceWater water = request.water();
    return new MixSheet.Water(
        water.strength(),
        water.measured(),
        water.predicted(),
        water.imbalancePercent(),
        water.alkalinity());
  }

  private MixSheet.Strength strength() {
    double total = blend.strength(foresight);
    double water = doses.waterStrength();
    Nutrients feed = blend.ofFeed();
    double urea = feed.nitrogen() > 0 ? 100 * feed.of(Nutrient.UREA_N) / feed.nitrogen() : 0;
    return new MixSheet.Strength(
        doses.wanted(), total, total - water, water, blend.uncertainty(foresight), urea);
  }

  private MixSheet.Reading reading(Blend of) {
    Meter meter = request.meter();
    double shown = meter.shown(raw(of), request.celsius());
    double own = foresight.percentPerKelvin(of.perLitre(), request.celsius());
    String how =
        meter.compensates()
            ? "compensating %s %%/K".formatted(Text.plain(meter.percentPerKelvin()))
            : "not compensating";
    return new MixSheet.Reading(
        shown * meter.unit().perMilliSiemens(),
        meter.unit().text(),
        request.celsius(),
        meter.compensates(),
        meter.percentPerKelvin(),
        own,
        "%s at %s, %s (this feed: %s %%/K)"
            .formatted(
                meter.unit().show(shown),
                request.units().temperature(request.celsius()),
                how,
                Text.fixed(own, 2)));
  }

  private double raw(Blend of) {
    return Steps.raw(of, request, foresight);
  }

  private MixSheet.Volume volume() {
    String text = request.units().volume(scale.litres());
    String pots =
        request.perPot() > 0
            ? ", %s pots at %s"
                .formatted(
                    Text.plain(Math.floor(scale.litres() / request.perPot() + 1e-9)),
                    request.units().volume(request.perPot()))
            : "";
    return new MixSheet.Volume(
        scale.litres(), request.pots(), request.perPot(), text + " of feed" + pots);
  }

  private List<MixSheet.Weighing> weigh() {
    List<MixSheet.Weighing> lines = new ArrayList<>();
    for (int i = 0; i < exact.size(); i++) {
      Product product = exact.get(i).product();
      String stock = stocks.map(s -> s.of(product)).orElse("");
      lines.add(scale.weighing(exact.get(i), weighed.get(i), stock));
    }
    return lines;
  }

  private Optional<MixSheet.Acid> acid() {
    AcidDose acid = request.acid();
    if (acid.isNone()) {
      return Optional.empty();
    }
    double millilitres = acid.millilitresPerLitre() * scale.litres();
    return Optional.of(
        new MixSheet.Acid(
            acid.acid().word,
            millilitres,
            acid.neutralised(),
            acid.left(),
            "%s of %s acid for %s of water takes %s mmol/L of alkalinity, leaves %s"
                .formatted(
                    request.units().volume(millilitres / 1000),
                    acid.acid().word,
                    request.units().volume(scale.litres()),
                    Text.figures(acid.neutralised(), 3),
                    Text.figures(acid.left(), 3))));
  }

  private List<MixSheet.CurvePoint> curve() {
    double grams = exact.stream().mapToDouble(Dose::gramsPerLitre).sum();
    List<MixSheet.CurvePoint> points = new ArrayList<>();
    for (int i = 0; i < CURVE_POINTS && grams > 0; i++) {
      double share = CURVE_REACH * i / (CURVE_POINTS - 1);
      double at = doses.blend(exact).scaled(share).strength(foresight);
      if (!Double.isNaN(at)) {
        points.add(new MixSheet.CurvePoint(share * grams, at));
      }
    }
    return points;
  }

  private List<String> notes(MixSheet.Strength strength) {
    List<String> notes = new ArrayList<>();
    if (strength.added() < LITTLE_FEED * strength.total()) {
      notes.add(
          "only %s of %s mS/cm is feed: the water uses up the rest"
              .formatted(Text.fixed(strength.added(), 2), Text.fixed(strength.total(), 2)));
    }
    if (strength.ureaPercent() >= 1) {
      notes.add(
          "%s %% of the feed's nitrogen is urea, which conductivity cannot see"
              .formatted(Text.fixed(strength.ureaPercent(), 0)));
    }
    Stream.of(
            request.notes(),
            request.water().notes(),
            doses.notes(),
            scale.notes(),
            stocks.map(Stocks::notes).orElse(List.of()))
        .forEach(notes::addAll);
    exact.forEach(
        dose ->
            dose.product().notes().forEach(note -> notes.add(dose.product().id() + ": " + note)));
    return notes;
  }
}
