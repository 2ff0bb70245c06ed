package feedwitness.publish;

import feedwitness.engine.AlarmWatch;

/** All that the interface asks, over one nursery in memory. */
final class FixtureDesks {
  private FixtureDesks() {}

  static Desks of(FixtureNursery nursery) {
    return of(nursery, new FixtureDesk());
  }

  static Desks of(FixtureNursery nursery, FixtureDesk desk) {
    FixtureEvidence evidence = new FixtureEvidence();
    AlarmWatch alarms = nursery.watch(evidence);
    return new Desks(
        nursery,
        nursery,
        desk,
        new FixtureData(nursery),
        alarms,
        evidence,
        new FixtureMessages(),
        nursery.checks(evidence),
        nursery.lines(evidence, alarms));
  }
}
