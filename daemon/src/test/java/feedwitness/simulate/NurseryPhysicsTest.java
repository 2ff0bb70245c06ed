package feedwitness.simulate;

import static feedwitness.simulate.Nurseries.MONDAY;
import static feedwitness.simulate.Nurseries.local;
import static feedwitness.simulate.Nurseries.quiet;
import static feedwitness.simulate.Nurseries.seconds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.simulate.Recipe.Strength;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class NurseryPhysicsTest {

  @Test
  void waterFeedAndMineralsAddUpOverTheWholeWeek() {
    Nursery nursery = Nurseries.with(3, Schedule.week(), MONDAY);
    nursery.advanceTo(MONDAY.plus(Duration.ofDays(7)));
    Balance b = nursery.balance();
    assertTrue(b.waterOut() > 15_000, () -> "little happened: " + b);
    assertEquals(b.waterIn(), b.waterOut() + b.waterHeld(), 1e-9 * b.waterIn());
    assertEquals(b.saltIn(), b.saltOut() + b.saltHeld(), 1e-9 * b.saltIn());
    assertEquals(b.mineralIn(), b.mineralOut() + b.mineralHeld(), 1e-9 * b.mineralIn());
  }

  @Test
  void sourceWaterStaysBetweenNineAndSixteenDegreesAllYear() {
    double coldest = 99;
    double warmest = -99;
    for (int day = 1; day <= 365; day += 13) {
      Instant noon =
          LocalDate.ofYearDay(2025, day).atTime(12, 0).atZone(Nurseries.ZONE).toInstant();
      Nursery nursery = quiet(noon);
      seconds(nursery, 60);
      double celsius = nursery.truth().source().celsius();
      coldest = Math.min(coldest, celsius);
      warmest = Math.max(warmest, celsius);
    }
    assertEquals(9.6, coldest, 0.6);
    assertEquals(15.4, warmest, 0.6);
  }

  @Test
  void aBatchOvershootsWhereTheSaltsArePouredInAndSettlesAtItsStrength() {
    Nursery nursery = quiet(MONDAY);
    nursery.advanceTo(local(16, 7, 30));
    double highest = 0;
    for (int i = 0; i < 3 * 3600; i++) {
      nursery.step();
      highest = Math.max(highest, nursery.truth().tank().at25());
    }
    Truth settled = nursery.truth();
    assertTrue(highest > 1.6, "highest was " + highest);
    assertEquals(1.50, settled.tank().at25(), 0.05);
    assertEquals(settled.feed().tankMixedAt25(), settled.tank().at25(), 0.002);
    assertEquals(582, settled.feed().tankLitres(), 1);
  }

  @Test
  void theLineCarriesEachStrengthOfTheDay() {
    Nursery nursery = quiet(local(17, 6, 0));
    boolean growing = false;
    boolean heavy = false;
    boolean seedlings = false;
    for (int event = 0; event < 24; event++) {
      Truth truth = Nurseries.watering(nursery);
      double target = truth.feed().target();
      assertEquals(target, truth.line().at25(), 0.06, () -> "at " + truth);
      growing |= target == 1.50;
      heavy |= target == 1.95;
      seedlings |= target == 0.80;
      seconds(nursery, 600);
    }
    assertTrue(growing && heavy && seedlings);
  }

  @Test
  void theFirstWaterOnASundayIsPlain() {
    Nursery nursery = quiet(local(22, 6, 0));
    Truth truth = Nurseries.watering(nursery);
    assertEquals(truth.source().at25(), truth.line().at25(), 0.01);
  }

  @Test
  void theLineHoldsItsWaterBetweenEventsAndWarmsToTheAir() {
    Nursery nursery = quiet(local(17, 12, 0));
    Truth during = Nurseries.watering(nursery);
    while (nursery.truth().feed().flow() > 0) {
      nursery.step();
    }
    seconds(nursery, 900);
    Truth after = nursery.truth();
    assertEquals(0, after.feed().flow());
    assertEquals(during.line().at25(), after.line().at25(), 0.03);
    assertTrue(after.line().celsius() > during.line().celsius() + 0.5);
  }

  @Test
  void aSummerDayHasTwentyFourEventsOfFourToNineMinutes() {
    for (int day = 16; day < 23; day++) {
      Moment moment = Moment.at(local(day, 0, 0).getEpochSecond(), Nurseries.ZONE);
      IrrigationPlan plan = IrrigationPlan.of(moment, new Chance(5));
      assertEquals(24, plan.waterings().size());
      int free = 0;
      for (IrrigationPlan.Watering watering : plan.waterings()) {
        assertTrue(watering.seconds() >= 240 && watering.seconds() <= 540);
        assertTrue(watering.from() >= free, () -> "events overlap in " + plan);
        free = watering.from() + watering.seconds();
      }
    }
  }

  @Test
  void strokesAddUpToTheRatioSetInTheLongRun() {
    Schedule steady = Schedule.parse("t", "set injector-wander 0\nset injector-wear 0");
    Injector injector = new Injector(steady.parameters(), new Chance(1));
    double water = 0;
    double stock = 0;
    for (int second = 100; second < 100_100; second++) {
      injector.age();
      stock += injector.inject(20 / 60.0, 20, 80, second);
      water += 20 / 60.0;
    }
    assertEquals(80, (water + stock) / stock, 0.1);
    assertEquals(water / 0.45, (double) injector.strokes(), 1);
  }

  @Test
  void anInjectorInjectsLessAtATrickleWhenWornAndJustAfterAStart() {
    Schedule worn = Schedule.parse("t", "set injector-wander 0\nset injector-wear 1");
    Injector injector = new Injector(worn.parameters(), new Chance(1));
    double fresh = injector.share(20, 1000);
    assertEquals(1, fresh, 0.001);
    assertTrue(injector.share(2, 1000) < 0.97);
    assertTrue(injector.share(20, 0) < 0.7);
    for (int i = 0; i < 86_400; i++) {
      injector.age();
    }
    assertEquals(0.99 * fresh, injector.share(20, 1000), 1e-6);
  }

  @Test
  void oneLitreOfStockMakesEightyOfGrowingOnAndFewerOfHeavyFeeders() {
    Recipe recipe = new Recipe(Parameters.DEFAULTS, new IonicFormula());
    assertEquals(80, recipe.ratio(Strength.GROWING_ON), 1e-9);
    assertTrue(recipe.ratio(Strength.HEAVY_FEEDERS) < 60);
    assertTrue(recipe.ratio(Strength.SEEDLINGS) > 200);
    assertTrue(Double.isInfinite(recipe.ratio(Strength.PLAIN)));
  }

  @Test
  void drainIsStrongerThanFeedAndComesEveryDay() {
    Nursery nursery = quiet(MONDAY);
    for (int day = 16; day < 21; day++) {
      nursery.advanceTo(local(day, 20, 0));
      Truth.Drain drain = nursery.truth().drain();
      assertTrue(drain.litres() > 0.5 && drain.litres() < 12, () -> "run-off " + drain);
    }
    assertTrue(nursery.truth().drain().at25() > 1.6);
  }
}
