package feedwitness.feed;

import java.util.Map;
import java.util.Optional;

/** The {@code acid} form: what takes alkalinity from the water. */
final class AcidReader {
  private static final double USUALLY_LEFT = 1;

  private AcidReader() {}

  static AcidDose read(Form form, SourceWater water) {
    int before = form.faults().size();
    form.missing("kind", "write nitric, phosphoric or sulfuric");
    form.missing("strength", "percent of acid by weight, as the canister says");
    form.missing("density", "a strength by weight needs it: kg/L, as the canister says");
    Optional<AcidDose.Acid> acid =
        form.choice(
            "kind",
            Map.of(
                "nitric", AcidDose.Acid.NITRIC,
                "phosphoric", AcidDose.Acid.PHOSPHORIC,
                "sulfuric", AcidDose.Acid.SULFURIC));
    Optional<Double> percent = form.read("strength", Amounts::percent, 1, 98, "%");
    Optional<Double> density = form.read("density", Amounts::density, 1, 1.9, "g/mL");
    double leave =
        form.read("leave", WaterText::alkalinity, 0.3, 20, "mmol/L").orElse(USUALLY_LEFT);
    form.finish();
    if (form.faults().size() > before) {
      return AcidDose.NONE;
    }
    return AcidDose.of(
        acid.orElseThrow(),
        water.alkalinity(),
        leave,
        percent.orElseThrow(),
        density.orElseThrow());
  }
}
