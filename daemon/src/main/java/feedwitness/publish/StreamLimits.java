package feedwitness.publish;

import java.time.Duration;

/**
 * Bounds of the event streams.
 *
 * @param most streams open at a time
 * @param inbox measurements that may wait to be written out for the streams; when full,
 *     measurements are left out and every page is told to load afresh
 * @param queue events that may wait for one client; when full, that client is dropped
 * @param pingEvery comment sent after so much quiet, so that a vanished client is noticed
 */
record StreamLimits(int most, int inbox, int queue, Duration pingEvery) {
  static final StreamLimits USUAL = new StreamLimits(64, 1024, 256, Duration.ofSeconds(15));
}
