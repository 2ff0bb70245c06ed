package feedwitness.feed;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The nutrients of a feed, element and oxide side by side, beside what is wanted. */
final class NutrientLines {
  private static final Set<Nutrient> NITROGEN =
      EnumSet.of(Nutrient.NITRATE_N, Nutrient.AMMONIUM_N, Nutrient.UREA_N);

  private final MixRequest request;
  private final Blend blend;

  NutrientLines(MixRequest request, Blend blend) {
    this.request = request;
    this.blend = blend;
  }

  List<MixSheet.NutrientLine> lines() {
    List<MixSheet.NutrientLine> lines = new ArrayList<>();
    lines.add(line("N", NITROGEN, "", 1, true));
    for (Nutrient each : Nutrient.values()) {
      Set<Nutrient> self = EnumSet.of(each);
      if (sum(blend.nutrients(), self) > 0 || wish(each.symbol()).isPresent()) {
        boolean conducts = each != Nutrient.UREA_N && each != Nutrient.B;
        lines.add(
            line(each.symbol(), self, each.oxide().orElse(""), each.oxidePerElement(), conducts));
      }
    }
    return lines;
  }

  private MixSheet.NutrientLine line(
      String symbol, Set<Nutrient> counts, String oxide, double factor, boolean conducts) {
    double total = sum(blend.nutrients(), counts);
    double feed = sum(blend.ofFeed(), counts);
    Optional<Wish> wish = wish(symbol);
    return new MixSheet.NutrientLine(
        symbol,
        total - feed,
        feed,
        total,
        oxide,
        oxide.isEmpty() ? Double.NaN : total * factor,
        wish.map(Wish::milligrams).orElse(Double.NaN),
        wish.map(Wish::ceiling).orElse(false),
        conducts);
  }

  private Optional<Wish> wish(String symbol) {
    return request.wishes().stream().filter(w -> w.symbol().equals(symbol)).findFirst();
  }

  private static double sum(Nutrients of, Set<Nutrient> counts) {
    return counts.stream().mapToDouble(of::of).sum();
  }
}
