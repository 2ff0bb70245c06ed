package feedwitness.feed;

import feedwitness.solution.Composition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The work in order, and what may be read after each addition. */
final class Steps {
  /** Of a barrel, while salts are stirred in. */
  private static final double FIRST_FILL = 2.0 / 3;

  private final MixRequest request;
  private final Foresight foresight;
  private final Optional<Stocks> stocks;
  private final Scale scale;
  private final List<MixSheet.Step> steps = new ArrayList<>();

  Steps(MixRequest request, Foresight foresight, Optional<Stocks> stocks, Scale scale) {
    this.request = request;
    this.foresight = foresight;
    this.stocks = stocks;
    this.scale = scale;
  }

  /** mS/cm at the temperature of the tank; the water's offset goes with temperature as the rest. */
  static double raw(Blend blend, MixRequest request, Foresight foresight) {
    Composition composition = blend.perLitre();
    double at25 = foresight.at25(composition);
    double raw = Foresight.value(foresight.at(composition, request.celsius()));
    return at25 > 0 ? raw * (at25 + request.water().offset()) / at25 : raw;
  }

  List<MixSheet.Step> steps(List<Dose> doses) {
    List<Dose> used =
        doses.stream()
            .filter(d -> d.gramsPerLitre() > 0)
            // calcium last, when all else is well diluted; the heavy weights before the traces
            .sorted(
                Comparator.<Dose, Boolean>comparing(d -> d.product().hasCalcium())
                    .thenComparing(d -> -d.gramsPerLitre()))
            .toList();
    if (request.stock().isPresent() && stocks.isPresent()) {
      concentrates(used, request.stock().get(), stocks.get());
    } else {
      tank(used);
    }
    return steps;
  }

  private void tank(List<Dose> used) {
    Blend all = new Blend(request.water(), request.acid(), used);
    add(
        "Fill the tank with %s of water at %s, and stir."
            .formatted(
                request.units().volume(request.litres()),
                request.units().temperature(request.celsius())),
        new Blend(request.water(), AcidDose.NONE, List.of()));
    if (!request.acid().isNone()) {
      double millilitres = request.acid().millilitresPerLitre() * request.litres();
      add(
          "Pour %s of %s acid slowly into the water, stir, let it fizz out."
              .formatted(request.units().volume(millilitres / 1000), request.acid().acid().word),
          all.first(0));
    }
    for (int i = 0; i < used.size(); i++) {
      add(
          "Dissolve %s of %s in a bucket of this water, pour it in, stir until even."
              .formatted(amount(used.get(i)), used.get(i).product().title()),
          all.first(i + 1));
    }
  }

  private void concentrates(List<Dose> used, StockWish wish, Stocks parted) {
    for (String name : parted.names()) {
      List<Dose> own = used.stream().filter(d -> parted.of(d.product()).equals(name)).toList();
      if (own.isEmpty()) {
        continue;
      }
      barrel(name, own, wish);
    }
    if (!request.acid().isNone()) {
      double millilitres = request.acid().millilitresPerLitre() * scale.litres();
      say(
          "Acid goes by a tank of its own: %s of %s acid for %s of water."
              .formatted(
                  request.units().volume(millilitres / 1000),
                  request.acid().acid().word,
                  request.units().volume(scale.litres())));
    }
    add(
        "Set the injector: one litre of stock makes %s; measure what comes out."
            .formatted(request.units().volume(wish.makes())),
        new Blend(request.water(), request.acid(), used));
  }

  private void barrel(String name, List<Dose> own, StockWish wish) {
    Blend stock = new Blend(request.water(), AcidDose.NONE, own).scaled(wish.makes());
    Blend begun = stock.scaled(1 / FIRST_FILL);
    say(
        "Fill the barrel for the %s to two thirds of %s with water, lukewarm if it can be had."
            .formatted(name, request.units().volume(wish.litres())));
    for (int i = 0; i < own.size(); i++) {
      add(
          "Stir in %s of %s until clear."
              .formatted(amount(own.get(i)), own.get(i).product().title()),
          begun.first(i + 1));
    }
    add(
        "Fill up to %s, stir, label it: %s, one litre makes %s."
            .formatted(
                request.units().volume(wish.litres()), name, request.units().volume(wish.makes())),
        stock);
  }

  private String amount(Dose dose) {
    return scale.weighing(dose, dose, "").text();
  }

  private void say(String text) {
    steps.add(new MixSheet.Step(steps.size() + 1, text, Double.NaN, Double.NaN, ""));
  }

  private void add(String text, Blend then) {
    double raw = raw(then, request, foresight);
    if (Double.isNaN(raw)) {
      say(text); // stronger than the model reaches, and than most meters
      return;
    }
    double shown = request.meter().shown(raw, request.celsius());
    steps.add(
        new MixSheet.Step(
            steps.size() + 1,
            text,
            raw,
            then.strength(foresight),
            request.meter().unit().show(shown)));
  }
}
