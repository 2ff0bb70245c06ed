package feedwitness.app;

import feedwitness.check.CheckInterval;
import feedwitness.engine.AlarmWatch;
import feedwitness.engine.CheckPlan;
import feedwitness.engine.CheckWatch;
import feedwitness.engine.Engine;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.History;
import feedwitness.settings.CheckRule;
import feedwitness.settings.CheckRules;
import feedwitness.store.H2Ledger;

/** Puts checks together. */
final class Checks {
  private Checks() {}

  static CheckWatch watch(
      CheckRules rules,
      Engine engine,
      AlarmWatch alarms,
      H2Ledger ledger,
      History history,
      Afterthoughts later) {
    return new CheckWatch(
        new CheckWatch.Around(
            engine, engine::stampNow, engine::basis, engine::calibrate, alarms::report),
        new CheckPlan(
            rules.shelf(),
            point -> rules.of(point).tolerancePercent(),
            point -> interval(rules.of(point))),
        ledger,
        history,
        later);
  }

  private static CheckInterval interval(CheckRule rule) {
    return new CheckInterval(rule.interval(), rule.longestInterval());
  }
}
