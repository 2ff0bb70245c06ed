package feedwitness.watch.drift;

import feedwitness.quantity.Stamp;
import feedwitness.site.FeedLine;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A plain feed line for tests: an event every half hour from 07:00 to 19:00 that lasts five
 * minutes, a reading every ten seconds, 1.50 mS/cm in water of 0.46 mS/cm unless told otherwise.
 */
final class Waterings {
  static final long MONDAY = Instant.parse("2026-06-01T00:00:00Z").toEpochMilli();
  private static final long TEN = 10_000;
  private static final double SOURCE = 0.46;

  private final Random random;
  private final List<DriftFinding> findings = new ArrayList<>();
  private DriftWatch watch;
  private long millis = MONDAY;
  private long wallOffset;
  private int boot = 1;
  private double strength = 1.50;
  private boolean sourceSpeaks = true;
  private double event = 1;
  private double rested = 1e6;

  Waterings(FeedLine line, long seed) {
    watch = new DriftWatch(line);
    random = new Random(seed);
  }

  DriftWatch watch() {
    return watch;
  }

  List<DriftFinding> findings() {
    return findings;
  }

  void strength(double other) {
    strength = other;
  }

  void source(boolean speaks) {
    sourceSpeaks = speaks;
  }

  void jumpClock(long by) {
    wallOffset += by;
  }

  /** The service starts again, with its clock set otherwise by so much, ms. */
  void restart(long by) {
    boot++;
    wallOffset += by;
    watch = DriftWatch.resume(watch.feedLine(), watch.state());
  }

  void use(DriftWatch other) {
    watch = other;
  }

  Stamp stamp() {
    return new Stamp(boot, millis / TEN, millis * 1_000_000, millis + wallOffset, true);
  }

  void note(LineChange change) {
    findings.addAll(watch.note(change, stamp()));
  }

  Waterings hours(double hours) {
    for (long end = millis + Math.round(hours * 3_600_000); millis < end; ) {
      millis += TEN;
      reading();
    }
    return this;
  }

  private void reading() {
    int ofDay = (int) (millis / 1000 % 86_400);
    int since = ofDay % 1800;
    boolean flows = ofDay >= 7 * 3600 && ofDay < 19 * 3600 && since < 300;
    if (flows && since < 10) {
      event = 1 + 0.006 * random.nextGaussian();
    }
    rested = flows ? 0 : rested + TEN / 1000.0;
    double celsius = flows ? 12 + 8 * Math.exp(-since / 12.0) : 20 - 8 * Math.exp(-rested / 1500);
    double dip = flows ? 1 - 0.15 * Math.exp(-since / 10.0) : 1;
    double noise = 1 + 0.002 * random.nextGaussian();
    double value = (SOURCE + (strength - SOURCE) * event * dip) * noise;
    long nanos = millis * 1_000_000;
    long wall = millis + wallOffset;
    if (sourceSpeaks) {
      findings.addAll(watch.source(boot, nanos, wall, SOURCE * noise, 0.005, 12));
    }
    findings.addAll(watch.line(boot, nanos, wall, value, 0.01, celsius));
  }
}
