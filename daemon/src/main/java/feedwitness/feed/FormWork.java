package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** One form at work: its mix, and what is asked beside it. */
final class FormWork {
  private final Foresight foresight;
  private final List<Fault> faults = new ArrayList<>();
  private final Form form;
  private Optional<MixRequest> request = Optional.empty();
  private Optional<List<Dose>> doses = Optional.empty();
  private Optional<MixSheet> sheet = Optional.empty();

  FormWork(Map<String, ?> fields, Foresight foresight) {
    this.foresight = foresight;
    form = new Form(fields, "", faults);
  }

  MixOutcome outcome() {
    boolean aside = Stream.of("supplement", "fallback", "check").anyMatch(form::has);
    boolean mix = Stream.of("goal", "use", "make", "stock").anyMatch(form::has);
    Products products = MixReader.products(form, foresight);
    if (mix || !aside) {
      mix(products);
    }
    Optional<Supplement> supplement = form.form("supplement").flatMap(s -> supplement(s, products));
    Optional<Fallback> fallback = form.form("fallback").flatMap(f -> Fallback.read(f, products));
    List<StockCheck> checks = form.form("check").map(this::checks).orElse(List.of());
    form.has("title");
    form.has("units");
    form.finish();
    return faults.isEmpty()
        ? new MixOutcome.Mixed(sheet, supplement, fallback, checks)
        : new MixOutcome.Faulty(faults);
  }

  /** What is mixed, to be solved back; after {@link #outcome}, if that found no fault. */
  Optional<FeedStock> feed() {
    return request.flatMap(
        r ->
            doses.flatMap(
                d ->
                    FeedStock.of(
                        r.title(),
                        new Blend(r.water(), r.acid(), d),
                        r.stock().map(StockWish::makes).orElse(Double.NaN),
                        foresight)));
  }

  private void mix(Products products) {
    request = new MixReader(form, products, foresight).read();
    if (request.isEmpty() || !faults.isEmpty()) {
      return;
    }
    Doses finder = new Doses(request.get(), foresight);
    doses = finder.find();
    if (doses.isEmpty()) {
      faults.addAll(finder.faults());
      return;
    }
    SheetMaker maker = new SheetMaker(request.get(), foresight, finder, doses.get());
    sheet = Optional.of(maker.sheet());
    faults.addAll(maker.faults());
  }

  /** Beside the mix of this form, else in its water, else in rain. */
  private Optional<Supplement> supplement(Form of, Products products) {
    AcidDose acid = request.map(MixRequest::acid).orElse(AcidDose.NONE);
    SourceWater water =
        request
            .map(MixRequest::water)
            .or(() -> form.form("water").flatMap(w -> WaterReader.read(w, foresight)))
            .orElse(SourceWater.RAIN);
    return Supplement.read(
        of, products, new Blend(water, acid, doses.orElse(List.of())), foresight);
  }

  private List<StockCheck> checks(Form of) {
    List<StockCheck> checks = new ArrayList<>();
    Optional<StockWish> wish = request.flatMap(MixRequest::stock);
    Optional<Form> dilution = of.form("dilution");
    if (dilution.isPresent() && (wish.isEmpty() || doses.isEmpty())) {
      if (faults.isEmpty()) {
        of.fault("dilution", "has no stock to check", "give the mix and the stock it was made for");
      }
    } else if (dilution.isPresent()) {
      Stocks stocks = new Stocks(request.orElseThrow(), wish.get(), foresight);
      StockCheck.dilution(dilution.get(), stocks, doses.get()).ifPresent(checks::add);
    }
    of.form("draw-down").flatMap(d -> StockCheck.drawDown(d, wish)).ifPresent(checks::add);
    of.finish();
    return checks;
  }
}
