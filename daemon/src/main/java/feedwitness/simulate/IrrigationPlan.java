package feedwitness.simulate;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A day's irrigation events: 24 in summer, 6 in midwinter, 4 to 9 minutes each, between 07:00 and
 * 19:00. Growing on gets the most; heavy feeders a spell after noon; seedlings the last two on
 * Tuesday and Friday; on a summer Sunday the first three are a flush with plain water.
 */
record IrrigationPlan(long dayNumber, List<Watering> waterings) {
  private static final int FIRST = 7 * 3600;
  private static final int SPAN = 12 * 3600;
  private static final int GAP = 120;

  /** Seconds of the local day; flow as a share of what its beds usually take. */
  record Watering(int from, int seconds, Recipe.Strength strength, double flow) {
    boolean covers(int secondOfDay) {
      return secondOfDay >= from && secondOfDay < from + seconds;
    }
  }

  IrrigationPlan {
    waterings = List.copyOf(waterings);
  }

  static IrrigationPlan of(Moment day, Chance chance) {
    Random random = chance.stream("irrigation", day.dayNumber());
    int events = (int) Math.min(24, Math.max(6, Math.round(15.5 + 12 * day.season())));
    int slot = SPAN / events;
    List<Watering> plan = new ArrayList<>();
    for (int i = 0; i < events; i++) {
      int seconds = 240 + random.nextInt(301);
      int from = FIRST + i * slot + random.nextInt(Math.min(600, slot - seconds - GAP));
      double flow = 1 + 0.02 * random.nextGaussian();
      plan.add(new Watering(from, seconds, strength(day, i, events), flow));
    }
    return new IrrigationPlan(day.dayNumber(), plan);
  }

  private static Recipe.Strength strength(Moment day, int index, int events) {
    DayOfWeek weekday = day.dayOfWeek();
    if (weekday == DayOfWeek.SUNDAY && index < 3 && day.season() > 0.2) {
      return Recipe.Strength.PLAIN;
    }
    boolean seedlings = weekday == DayOfWeek.TUESDAY || weekday == DayOfWeek.FRIDAY;
    if (seedlings && index >= events - 2) {
      return Recipe.Strength.SEEDLINGS;
    }
    boolean afterNoon = index >= events / 2 && index < events * 3 / 4;
    return afterNoon ? Recipe.Strength.HEAVY_FEEDERS : Recipe.Strength.GROWING_ON;
  }

  /** Litres it will give at this full flow, L/min. */
  double litres(double fullFlow) {
    return waterings.stream()
        .mapToDouble(w -> w.seconds() / 60.0 * fullFlow * w.strength().flowShare())
        .sum();
  }
}
