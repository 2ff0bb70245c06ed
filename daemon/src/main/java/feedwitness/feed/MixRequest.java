package feedwitness.feed;

import java.util.List;
import java.util.Optional;

/**
 * What a mix is to be, every field read and right.
 *
 * @param total strength wanted at 25 °C, mS/cm
 * @param added strength to be added by the feed, mS/cm
 * @param wishes nutrients wanted
 * @param litres of feed to make; of all the stock makes where there is stock
 * @param pots to water with it; 0 unless given
 * @param perPot litres a pot takes; 0 unless given
 * @param celsius of the tank
 * @param scale smallest step of the scale, g
 */
record MixRequest(
    String title,
    UnitSystem units,
    SourceWater water,
    Frequency frequency,
    Optional<Double> total,
    Optional<Double> added,
    List<Wish> wishes,
    List<Use> uses,
    double litres,
    int pots,
    double perPot,
    double celsius,
    double scale,
    Meter meter,
    AcidDose acid,
    Optional<StockWish> stock,
    List<String> notes) {
  MixRequest {
    wishes = List.copyOf(wishes);
    uses = List.copyOf(uses);
    notes = List.copyOf(notes);
  }
}
