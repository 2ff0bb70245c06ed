package feedwitness.solution;

import java.util.Map;

/** Waters and feeds of the invented nursery, for tests. */
final class QuarryEnd {
  /** Hard borehole water, 0.46 mS/cm at 25 °C, alkalinity 3.9 mmol/L. */
  static final Composition BOREHOLE =
      Composition.of(
          Map.ofEntries(
              Map.entry(Ion.CA, 0.00180),
              Map.entry(Ion.MG, 0.00035),
              Map.entry(Ion.NA, 0.0005),
              Map.entry(Ion.K, 0.00004),
              Map.entry(Ion.CL, 0.0005),
              Map.entry(Ion.SO4, 0.00020),
              Map.entry(Ion.NO3, 0.00004),
              Map.entry(Ion.CO3, 0.0041)));

  /** Nitrate, sulfate and phosphate as a hundredfold stock would have them, in one. */
  static final Composition FEED =
      Composition.of(
              Map.ofEntries(
                  Map.entry(Ion.K, 0.0056),
                  Map.entry(Ion.NH4, 0.0012),
                  Map.entry(Ion.CA, 0.0020),
                  Map.entry(Ion.MG, 0.0008),
                  Map.entry(Ion.NO3, 0.0098),
                  Map.entry(Ion.SO4, 0.0008),
                  Map.entry(Ion.PO4, 0.0010)))
          .with(NeutralSolute.UREA, 0.0015)
          .with(Trace.MANGANESE, 1e-5)
          .with(Trace.CHELATE_1, 3e-5)
          .with(Trace.BORIC_ACID, 3e-5);

  /** House Feed alone, a stock without calcium: 40-fold. */
  static final Composition STOCK =
      Composition.of(
              Map.ofEntries(
                  Map.entry(Ion.K, 0.32),
                  Map.entry(Ion.NH4, 0.18),
                  Map.entry(Ion.MG, 0.04),
                  Map.entry(Ion.NO3, 0.46),
                  Map.entry(Ion.SO4, 0.04),
                  Map.entry(Ion.PO4, 0.04)))
          .with(NeutralSolute.UREA, 0.15);

  private QuarryEnd() {}
}
