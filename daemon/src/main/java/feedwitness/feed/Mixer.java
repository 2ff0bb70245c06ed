package feedwitness.feed;

import feedwitness.solution.ConductivityModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The feed sums behind one door: a form in, a mixing sheet or all its faults out. */
public final class Mixer {
  /** What a form may hold. */
  public static final List<String> SECTIONS =
      List.of(
          "title", "units", "water", "acid", "goal", "use", "make", "meter", "stock", "product");

  private final Foresight foresight;

  public Mixer(ConductivityModel model) {
    foresight = new Foresight(model);
  }

  /** Every fertilizer a recipe may name without describing it. */
  public List<Product> fertilizers() {
    return new Products().all();
  }

  /**
   * Works out a form, as {@code daemon/docs/feed.md} describes its fields.
   *
   * @param fields texts, numbers, truths, lists and maps of these
   */
  public MixOutcome mix(Map<String, ?> fields) {
    List<Fault> faults = new ArrayList<>();
    Form form = new Form(fields, "", faults);
    Optional<MixRequest> request = new MixReader(form, foresight).read();
    form.finish();
    if (!faults.isEmpty() || request.isEmpty()) {
      return new MixOutcome.Faulty(faults);
    }
    return mix(request.get());
  }

  MixOutcome mix(MixRequest request) {
    Doses doses = new Doses(request, foresight);
    Optional<List<Dose>> exact = doses.find();
    if (exact.isEmpty()) {
      return new MixOutcome.Faulty(doses.faults());
    }
    SheetMaker maker = new SheetMaker(request, foresight, doses, exact.get());
    MixSheet sheet = maker.sheet();
    return maker.faults().isEmpty()
        ? new MixOutcome.Mixed(sheet)
        : new MixOutcome.Faulty(maker.faults());
  }
}
