package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Concentrates and how they are let down. */
class StockTest {
  private static Map<String, Object> stock(Object... more) {
    Map<String, Object> stock = new HashMap<>();
    stock.put("volume", "200 L");
    stock.put("coldest-night", "4 °C");
    for (int i = 0; i < more.length; i += 2) {
      stock.put(String.valueOf(more[i]), more[i + 1]);
    }
    return stock;
  }

  private static MixSheet.Stock one(Object... more) {
    return Forms.oneBag().with("make", Map.of()).with("stock", stock(more)).sheet().stocks().get(0);
  }

  @Test
  void weighsABarrelForTheInjectorOfTheGlasshouse() {
    MixSheet sheet =
        Forms.oneBag().with("stock", stock("makes", 80)).with("make", Map.of()).sheet();
    assertEquals(16_000, sheet.stocks().get(0).servesLitres());
    assertEquals(16_000 * 1.1287, sheet.weigh().get(0).grams(), 5);
    assertEquals("stock", sheet.weigh().get(0).stock());
    assertTrue(Forms.says(sheet.cautions(), "back-flow preventer"));
    assertTrue(Forms.says(sheet.cautions(), "never together with a calcium stock"));
  }

  @Test
  void tellsRatioPercentAndPartsApart() {
    assertEquals(80, one("percent", "1.25 %").makes(), 1e-9);
    assertEquals(80, one("parts-water", 79).makes(), 1e-9);
    MixSheet.Stock fifteen = one("makes", 15);
    assertEquals(14, fifteen.partsWater());
    assertEquals(100 / 15.0, fifteen.percent());
    Forms.oneBag()
        .with("stock", stock("makes", 80, "percent", "1.25 %"))
        .refused("stock.makes", "in more than one way");
  }

  @Test
  void readsTheDialOfASiphonMixer() {
    List<Map<String, Integer>> points =
        List.of(
            Map.of("dial", 1, "makes", 40),
            Map.of("dial", 4, "makes", 80),
            Map.of("dial", 8, "makes", 160));
    assertEquals(4, one("makes", 80, "dial-points", points).dial(), 1e-9);
    assertEquals(40 * Math.sqrt(2), one("dial", 2.5, "dial-points", points).makes(), 1e-9);
    Forms.oneBag()
        .with("stock", stock("dial", 9, "dial-points", points))
        .refused("stock.dial", "not between the settings", "draw-down");
  }

  @Test
  void refusesCalciumWithSulfateInOneBarrel() {
    Forms.salts(Map.of("Ca", 100, "Mg", 25), "calcium-nitrate", "magnesium-sulfate")
        .with("stock", stock("makes", 100))
        .refused("stock.stocks", "falls out as stone", "two stocks");
    MixSheet apart =
        Forms.salts(Map.of("Ca", 100, "Mg", 25), "calcium-nitrate", "magnesium-sulfate")
            .with("stock", stock("makes", 100, "stocks", 2))
            .sheet();
    assertEquals("calcium stock", apart.weigh().get(0).stock());
    assertEquals("sulfate-phosphate stock", apart.weigh().get(1).stock());
  }

  /**
   * By hand: potassium sulfate at 2 °C, 7.11 + 0.2 (8.46 - 7.11) % by mass or 79.7 g in a kilogram
   * of water; a litre of stock holds 0.97 kg of water. A tenth is kept back.
   */
  @Test
  void refusesWhatTheColdestNightWouldDropAndStatesTheSafeGrams() {
    Forms forms =
        Forms.salts(Map.of("K", 300), "potassium-sulfate")
            .with("stock", stock("makes", 200, "coldest-night", "2 °C", "volume", "10 L"));
    Fault fault = forms.faults().get(0);
    assertEquals("stock.makes", fault.field());
    assertTrue(fault.reason().contains("K2SO4 would fall out at 2 °C"), fault::message);
    double safe =
        Double.parseDouble(fault.remedy().replaceAll(".*potassium-sulfate ([0-9.]+) g.*", "$1"));
    assertEquals(0.9 * 797 * 0.97, safe, 5);
    double makes =
        Double.parseDouble(fault.remedy().replaceAll(".*one litre makes ([0-9.]+) L.*", "$1"));
    MixSheet kept =
        Forms.salts(Map.of("K", 300), "potassium-sulfate")
            .with("stock", stock("makes", makes, "coldest-night", "2 °C", "volume", "10 L"))
            .sheet();
    assertEquals(0.9, kept.stocks().get(0).saturation(), 0.02);
    assertEquals(safe, kept.weigh().get(0).grams(), 0.02 * safe);
  }

  @Test
  void seesTheSaltThatForeignIonsForm() {
    List<Fault> faults =
        Forms.salts(Map.of("K", 400, "S", 150), "potassium-nitrate", "magnesium-sulfate")
            .with("stock", stock("makes", 200))
            .faults();
    assertTrue(faults.get(0).reason().contains("K2SO4 would fall out"), faults::toString);
  }

  /** 345 J/g of potassium nitrate: 100 g/L cool a kilogram of water by 8 K. */
  @Test
  void foretellsTheCoolingOnDissolving() {
    MixSheet sheet =
        Forms.salts(Map.of("K", 193.35), "potassium-nitrate")
            .with("stock", stock("makes", 200, "coldest-night", "10 °C"))
            .sheet();
    assertEquals(345 * 100 / 4180.0, sheet.stocks().get(0).coolsBy(), 0.6);
    assertTrue(Forms.says(sheet.notes(), "dissolving cools by about"));
  }

  @Test
  void judgesAMeasuredDilution() {
    Forms forms = Forms.oneBag().with("make", Map.of()).with("stock", stock("makes", 80));
    double expected =
        Double.parseDouble(
            forms.sheet().stocks().get(0).check().replaceAll(".*reads ([0-9.]+) mS.*", "$1"));
    StockCheck good = dilution(forms, expected);
    assertEquals(1, good.ratio(), 0.02);
    assertTrue(good.text().contains("as it should be"), good::text);
    StockCheck weak = dilution(forms, 0.46 + 0.7 * (expected - 0.46));
    assertEquals(0.7, weak.ratio(), 0.02);
    assertTrue(weak.text().contains("sure: 30 % too weak"), weak::text);
  }

  private static StockCheck dilution(Forms forms, double measured) {
    return forms
        .with(
            "check",
            Map.of("dilution", Map.of("stock", "10 mL", "in", "1 L", "measured", measured)))
        .mixed()
        .checks()
        .get(0);
  }

  @Test
  void findsTheRatioByDrawDownWithoutConductivity() {
    Forms forms = Forms.oneBag().with("make", Map.of()).with("stock", stock("makes", 80));
    StockCheck worn =
        forms
            .with("check", Map.of("draw-down", Map.of("drawn", "1 L", "delivered", "92 L")))
            .mixed()
            .checks()
            .get(0);
    assertEquals(92, worn.found(), 1e-9);
    assertTrue(worn.text().contains("13 % less stock than set"), worn::text);
  }

  @Test
  void takesAlkalinityAwayWithAcidAndCountsItsNitrogen() {
    MixSheet sheet =
        Forms.oneBag()
            .with("acid", Map.of("kind", "nitric", "strength", "60 %", "density", "1.37"))
            .sheet();
    MixSheet.Acid acid = sheet.acid().orElseThrow();
    assertEquals(2.9 * 600 * 63.01 / (0.60 * 1370), acid.millilitres(), 0.5);
    assertEquals(1, acid.alkalinityLeft(), 1e-9);
    assertEquals(2.9 * 14.007, Forms.line(sheet, "nitrate-N").fromWater(), 0.1);
    assertTrue(sheet.strength().water() - 0.46 < 0.1);
    assertTrue(Forms.says(sheet.cautions(), "Acid into water, never water into acid"));
    Map<String, Object> nitric = Map.of("kind", "nitric", "strength", "60 %", "density", "1.37");
    Forms.oneBag()
        .with("acid", nitric)
        .with("water", Map.of("measured", "0.46 mS/cm"))
        .refused("acid.kind", "was not measured", "acid by guess");
    Forms.oneBag()
        .with("acid", nitric)
        .with("water", Map.of("kind", "rain"))
        .refused("acid.leave", "needs no acid");
    Forms.oneBag()
        .with("acid", Map.of("kind", "nitric", "strength", "60 %"))
        .refused("acid.density", "is missing", "by weight needs it");
  }
}
