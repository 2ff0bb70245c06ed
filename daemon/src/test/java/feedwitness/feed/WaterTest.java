package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.Ion;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Water reports in the units they come in. */
class WaterTest {
  private static SourceWater water(Map<String, ?> report) {
    return WaterReader.read(new Form(report, "", new java.util.ArrayList<>()), Forms.FORESIGHT)
        .orElseThrow();
  }

  private static Map<String, Object> borehole(String key, String value) {
    Map<String, Object> changed = new HashMap<>(Forms.BOREHOLE);
    changed.put(key, value);
    return changed;
  }

  @Test
  void readsEveryUnitOfAlkalinity() {
    for (String text :
        new String[] {
          "3.9 mmol/L", "3.9 meq/L", "195.2 mg/L CaCO3", "237.9 mg/L HCO3", "10.94 °dH"
        }) {
      assertEquals(3.9, WaterText.alkalinity(text), 0.003, text);
    }
    assertThrows(IllegalArgumentException.class, () -> WaterText.alkalinity("195 mg/L"));
  }

  @Test
  void readsEveryUnitOfHardness() {
    for (String text : new String[] {"12.06 °dH", "2.15 mmol/L", "4.3 meq/L", "215.2 mg/L CaCO3"}) {
      assertEquals(2.15, WaterText.hardness(text), 0.002, text);
    }
  }

  @Test
  void tellsNitrateFromItsNitrogen() {
    assertEquals(50 / 62.005, WaterText.ion("50 mg/L", Ion.NO3), 1e-3);
    assertEquals(50 / 14.007, WaterText.ion("50 mg/L NO3-N", Ion.NO3), 1e-3);
    assertEquals(1.8, WaterText.ion("3.6 meq/L", Ion.CA), 1e-9);
  }

  @Test
  void foretellsTheBoreholeOfQuarryEnd() {
    SourceWater water = water(Forms.BOREHOLE);
    assertEquals(0.46, water.predicted(), 0.01);
    assertEquals(0.46, water.strength());
    assertEquals(0, water.imbalancePercent(), 1);
    assertEquals(72, water.nutrients().of(Nutrient.CA), 1e-9);
  }

  @Test
  void fillsWhatAShortReportDoesNotName() {
    SourceWater water =
        water(Map.of("hardness", "12 °dH", "alkalinity", "3.9 mmol/L", "sulfate", "19 mg/L"));
    assertTrue(Forms.says(water.notes(), "four parts calcium"));
    assertTrue(Forms.says(water.notes(), "sodium is not in the report"), water::toString);
    assertEquals(0.39, water.predicted(), 0.01);
  }

  @Test
  void warnsOfChargesSomewhatApartAndRefusesThoseFarApart() {
    SourceWater apart = water(borehole("calcium", "86 mg/L"));
    assertTrue(Forms.says(apart.notes(), "apart (good: 5)"), apart::toString);
    Forms.oneBag()
        .with("water", borehole("calcium", "7.2 mg/L"))
        .refused("water.calcium", "charges do not balance", "cations 1.", "another unit");
    Forms.oneBag()
        .with("water", borehole("alkalinity", "0.39 mmol/L"))
        .refused("water.alkalinity", "charges do not balance", "anions 1.29");
  }

  @Test
  void doubtsAReportThatDoesNotFitTheMeter() {
    SourceWater water = water(borehole("measured", "0.60 mS/cm"));
    assertTrue(Forms.says(water.notes(), "measured at 0.60 mS/cm, its report makes 0.45"));
  }

  @Test
  void takesAMeasuredStrengthAloneForHardWaterAndSaysSo() {
    SourceWater water = water(Map.of("measured", "0.80 mS/cm"));
    assertEquals(0.80, water.predicted(), 1e-6);
    assertTrue(Forms.says(water.notes(), "no report"));
    assertEquals(0, water(Map.of("kind", "rain")).strength());
  }
}
