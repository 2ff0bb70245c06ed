package feedwitness.engine;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.Stamp;
import feedwitness.site.Site;

/**
 * Follows what the engine measures, on the engine's thread; must return at once. What it throws is
 * logged, and the engine goes on.
 */
public interface EngineWatcher {

  /** After the point's status shows it. */
  void measured(Measurement measurement);

  /** About once a second of the engine's clock. */
  void tick(Stamp now);

  /** The configuration changed. */
  void follow(Site site);
}
