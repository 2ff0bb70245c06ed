package feedwitness.watch.diagnosis;

import feedwitness.watch.diagnosis.Diagnosis.Likely;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Weighs the evidence. Each piece speaks for or against causes by whole points; a lead of less than
 * {@link #LEAD} points is no separation.
 */
public final class Diagnoses {
  /** Points by which the first cause must lead not to be ambiguous. */
  static final int LEAD = 2;

  private static final int LISTED = 4;
  private static final double SOURCE_PERCENT = 5;
  private static final double PLAIN_PERCENT = 2.5;
  private static final double KELVIN = 3;
  private static final double MOST_OF_IT = -60;

  private static final List<String> DRIFT_TESTS =
      List.of(
          "catch a cup at the line and measure it with the handheld meter",
          "check the line probe in a standard solution",
          "note how much stock is drawn while a known volume of feed is delivered");
  private static final List<String> PLAIN_TESTS =
      List.of(
          "look into the stock barrel and at the suction strainer",
          "look whether the bypass is open or a flush was meant",
          "catch a cup at the line and measure it with the handheld meter");

  private final Map<Cause, Integer> points = new EnumMap<>(Cause.class);
  private final Map<Cause, String> reasons = new EnumMap<>(Cause.class);

  private Diagnoses() {}

  /** Likely causes of a drift. */
  public static Diagnosis of(Evidence evidence) {
    Diagnoses weighed = new Diagnoses();
    if (evidence.plain()) {
      weighed.plain(evidence);
    } else {
      weighed.drift(evidence);
    }
    return weighed.rank(evidence.plain() ? PLAIN_TESTS : DRIFT_TESTS);
  }

  private void plain(Evidence evidence) {
    say(Cause.PLAIN_WATER, 3, "the line reads as the source");
    say(Cause.STOCK_EMPTY, 2, "");
    say(Cause.LOST_PRIME, 1, "");
    if (evidence.air()) {
      say(Cause.STOCK_EMPTY, 3, "air was in the line before");
    }
  }

  private void drift(Evidence evidence) {
    say(Cause.INJECTOR, 3, "");
    say(Cause.PROBE_FOULED, evidence.sizePercent() < 0 ? 3 : 0, "");
    say(Cause.STOCK_STRENGTH, 2, "");
    say(Cause.OUTSIDE_FLOW, evidence.gradual() ? 0 : 1, "");
    if (evidence.sizePercent() < MOST_OF_IT) {
      say(Cause.LOST_PRIME, 4, "most of the feed is missing");
      say(Cause.PLAIN_WATER, 5, "most of the feed is missing");
      say(Cause.STOCK_EMPTY, 4, "");
    } else if (evidence.sizePercent() < 0 && !evidence.gradual()) {
      say(Cause.LOST_PRIME, 1, "");
    }
    if (evidence.learnt() && !evidence.gradual() && Math.abs(evidence.sizePercent()) > 15) {
      say(Cause.OTHER_STRENGTH, 4, "such a strength was not seen before");
    }
    if (evidence.sinceFill()) {
      say(Cause.STOCK_STRENGTH, 3, "it began with a fresh barrel");
    }
    source(evidence);
    probe(evidence);
  }

  private void source(Evidence evidence) {
    if (!evidence.sourceKnown()) {
      say(Cause.SOURCE_CHANGED, 2, "the source is not measured");
    } else if (Math.abs(evidence.sourceShiftPercent()) > SOURCE_PERCENT) {
      say(Cause.SOURCE_CHANGED, 4, "the source moved as well");
    }
    if (Math.abs(evidence.temperatureShiftKelvin()) > KELVIN) {
      say(Cause.TEMPERATURE_SENSOR, 5, "line and source part in temperature");
    }
  }

  private void probe(Evidence evidence) {
    if (Math.abs(evidence.plainShiftPercent()) > PLAIN_PERCENT) {
      say(Cause.PROBE_FOULED, 4, "it reads wrong in plain water too");
      say(Cause.INJECTOR, -2, "");
    } else if (!Double.isNaN(evidence.plainShiftPercent())) {
      say(Cause.INJECTOR, 2, "the probe reads right in plain water");
      say(Cause.PROBE_FOULED, -2, "");
    }
    if (evidence.check() == Evidence.Check.FAILED) {
      say(Cause.PROBE_FOULED, 6, "the check in a standard failed");
      say(Cause.INJECTOR, -3, "");
      say(Cause.STOCK_STRENGTH, -3, "");
    } else if (evidence.check() == Evidence.Check.PASSED) {
      say(Cause.PROBE_FOULED, -6, "");
      say(Cause.INJECTOR, 1, "the probe passed its check");
    }
    if (evidence.second() == Evidence.Second.AGREES) {
      say(Cause.PROBE_FOULED, -6, "");
      say(Cause.INJECTOR, 1, "a second probe agrees");
    } else if (evidence.second() == Evidence.Second.DISAGREES) {
      say(Cause.PROBE_FOULED, 6, "a second probe disagrees");
      say(Cause.INJECTOR, -3, "");
    }
  }

  private void say(Cause cause, int weight, String why) {
    points.merge(cause, weight, Integer::sum);
    if (!why.isEmpty()) {
      reasons.put(cause, why);
    }
  }

  private Diagnosis rank(List<String> tests) {
    List<Cause> order = new ArrayList<>();
    points.forEach(
        (cause, weight) -> {
          if (weight > 0) {
            order.add(cause);
          }
        });
    order.sort(Comparator.comparing((Cause c) -> -points.getOrDefault(c, 0)));
    boolean ambiguous =
        order.size() > 1
            && points.getOrDefault(order.get(0), 0) - points.getOrDefault(order.get(1), 0) < LEAD;
    List<Likely> causes =
        order.stream()
            .limit(LISTED)
            .map(cause -> new Likely(cause, reasons.getOrDefault(cause, "")))
            .toList();
    return new Diagnosis(causes, ambiguous, tests);
  }
}
