package feedwitness.feed;

import feedwitness.solution.Ion;
import java.util.ArrayList;
import java.util.List;

/** Cautions, each where it applies. */
final class Cautions {
  static final String LABEL_FIRST =
      "Label rates and local advice come first. Never feed dry or wilted pots: water them first.";

  private Cautions() {}

  static List<String> of(MixRequest request, List<Dose> doses) {
    List<String> all = new ArrayList<>();
    if (!request.acid().isNone()) {
      all.add(
          "Acid into water, never water into acid; gloves, goggles, air. Acid has a tank of its own"
              + " and never meets hypochlorite. Verify by pH: conductivity barely notices.");
    }
    boolean calcium = doses.stream().anyMatch(d -> d.product().hasCalcium());
    boolean other = doses.stream().anyMatch(d -> d.product().hasSulfateOrPhosphate());
    if (calcium && other) {
      all.add(
          "The calcium stock never together with the sulfate-phosphate stock: they turn to stone."
              + " They may meet only in the diluted feed.");
    } else if (request.stock().isPresent() && (calcium || other)) {
      all.add(
          calcium
              ? "This is a calcium stock: never together with one that holds sulfate or phosphate."
              : "This stock holds sulfate or phosphate: never together with a calcium stock.");
    }
    if (doses.stream().anyMatch(Cautions::isNitrateSalt)) {
      all.add("Nitrates are oxidisers: keep them dry, away from fuel, oil and sawdust.");
    }
    if (request.stock().isPresent()) {
      all.add("Concentrates locked away, labelled, out of reach of children and animals.");
      all.add(
          "A back-flow preventer between feed and drinking water, as the local plumbing code asks;"
              + " fed water is not for drinking.");
    }
    if (doses.stream().anyMatch(d -> d.product().ureaShare() > 0.05)) {
      all.add(
          "Part of the nitrogen is urea, which conductivity cannot see; in aged solution it breaks"
              + " down and the conductivity rises by itself.");
    }
    all.add(LABEL_FIRST);
    all.add("Overhead feed can burn leaves: rinse with plain water. Keep run-off out of drains.");
    all.add("Conductivity cannot tell one salt from another: a wrong bag reads right.");
    all.add("Feedwitness measures and advises; it doses nothing and is no safety interlock.");
    return all;
  }

  private static boolean isNitrateSalt(Dose dose) {
    return dose.product().salt().isPresent() && dose.product().perGram().of(Ion.NO3) > 0;
  }
}
