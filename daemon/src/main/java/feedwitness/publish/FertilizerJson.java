package feedwitness.publish;

import feedwitness.feed.Nutrient;
import feedwitness.feed.Product;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A fertilizer one may choose. */
record FertilizerJson(
    String id,
    String title,
    String kind,
    List<Percent> percent,
    boolean calcium,
    boolean sulfateOrPhosphate,
    double ureaPercent,
    @Nullable Range labelRate,
    List<String> notes) {

  FertilizerJson {
    percent = List.copyOf(percent);
    notes = List.copyOf(notes);
  }

  /** By weight, as element and as oxide. */
  record Percent(String symbol, double percent, String oxide, double oxidePercent) {}

  /** g/L. */
  record Range(double low, double high) {}

  static FertilizerJson of(Product product) {
    List<Percent> percent = new ArrayList<>();
    for (Map.Entry<Nutrient, Double> each : product.nutrients().amounts().entrySet()) {
      Nutrient nutrient = each.getKey();
      percent.add(
          new Percent(
              nutrient.symbol(),
              100 * each.getValue(),
              nutrient.oxide().orElse(""),
              nutrient.oxide().isEmpty()
                  ? Double.NaN
                  : 100 * each.getValue() * nutrient.oxidePerElement()));
    }
    return new FertilizerJson(
        product.id(),
        product.title(),
        product.isStraight() ? "salt" : "compound",
        percent,
        product.hasCalcium(),
        product.hasSulfateOrPhosphate(),
        100 * product.ureaShare(),
        product.labelRate().map(rate -> new Range(rate.low(), rate.high())).orElse(null),
        product.notes());
  }
}
