package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Slips of the pen: the field, the value, the reason, what to do. */
class BadInputTest {
  private static Forms goal(String strength) {
    return Forms.oneBag().with("goal", Map.of("strength", strength, "frequency", "weekly"));
  }

  @Test
  void suspectsMicrosiemensWhereMillisiemensCannotBe() {
    goal("1413 mS/cm").refused("goal.strength", "'1413 mS/cm'", "µS/cm?", "1413 µS/cm", "1.413");
    goal("1413").refused("goal.strength", "µS/cm?");
    assertEquals(1.413, Amounts.strength("1413 µS/cm"), 1e-12);
  }

  @Test
  void asksWhichPpm() {
    goal("150 ppm").refused("goal.strength", "nutrient or salts, at which factor?", "ppm 500");
    assertEquals(1.5, Amounts.strength("750 ppm 500"), 1e-12);
    assertEquals(1.5, Amounts.strength("1050 ppm (700)"), 1e-12);
    assertEquals(150, Amounts.milligramsPerLitre("150 ppm"));
  }

  @Test
  void namesADecimalComma() {
    goal("1,5 mS/cm").refused("goal.strength", "has a decimal comma", "write 1.5 mS/cm");
  }

  @Test
  void asksWhichGallon() {
    Forms.oneBag()
        .with("make", Map.of("volume", "20 gal"))
        .refused("make.volume", "US or imperial?");
  }

  @Test
  void refusesAStrengthBelowTheWater() {
    goal("0.40 mS/cm").refused("goal.strength", "the water alone has 0.46 mS/cm");
  }

  @Test
  void refusesAStrengthThatUreaCannotMake() {
    goal("1.5 mS/cm").only(Map.of("product", "urea")).refused("goal.strength", "do not conduct");
  }

  @Test
  void wantsToKnowHowOften() {
    Forms.oneBag()
        .with("goal", Map.of("strength", "1.5 mS/cm"))
        .refused("goal.frequency", "is missing", "every watering");
  }

  @Test
  void findsTheNearestName() {
    Forms.oneBag().only(Map.of("product", "huose-feed")).refused("use[1].product", "house-feed?");
    Forms.oneBag().with("watr", 1).refused("watr", "did you mean water?");
    Forms.oneBag()
        .only(Map.of("product", "house-feed", "purty", 98))
        .refused("use[1].purty", "did you mean purity?");
  }

  @Test
  void tellsAFaultyProductOnlyOnce() {
    Forms.oneBag()
        .only(Map.of("product", "own"))
        .with("product", List.of(Map.of("id", "own", "formula", "MgSO4·5H2O")))
        .refused("product[1].formula", "is no hydrate of MgSO4");
  }

  @Test
  void tellsEverythingAtOnce() {
    List<Fault> faults =
        Forms.MIXER.mix(Map.of()) instanceof MixOutcome.Faulty f ? f.faults() : List.of();
    assertEquals(
        List.of("water", "use", "goal", "make"), faults.stream().map(Fault::field).toList());
  }

  @Test
  void neverFailsOnWhateverStandsInAField() {
    for (Object odd :
        new Object[] {
          "",
          " ",
          "x",
          -1,
          1e300,
          Double.NaN,
          true,
          List.of(),
          Map.of(),
          List.of(1, Map.of()),
          "1e9",
          "9999999999999",
          "∞",
          "1\n2"
        }) {
      for (String section :
          new String[] {"water", "goal", "use", "make", "meter", "stock", "acid", "product"}) {
        Forms.oneBag().with(section, odd).outcome();
        Forms.oneBag()
            .with(section, Map.of("measured", odd, "volume", odd, "strength", odd))
            .outcome();
        Forms.oneBag().with(section, List.of(Map.of("product", odd, "label", odd))).outcome();
      }
    }
  }

  @Test
  void keepsAmountsWithinReason() {
    assertThrows(IllegalArgumentException.class, () -> Amounts.strength("-1 mS/cm"));
    assertThrows(IllegalArgumentException.class, () -> Amounts.grams("5 stone"));
    assertThrows(IllegalArgumentException.class, () -> ProductReader.rate("2 to 1 g/L"));
    assertEquals(new Product.Rate(0.5, 1.2), ProductReader.rate("0.5 to 1.2 g/L"));
    assertEquals(21, Amounts.celsius("69.8 °F"), 1e-9);
    assertTrue(Amounts.gramsPerLitre("1 oz/US gal") > 7.4);
  }
}
