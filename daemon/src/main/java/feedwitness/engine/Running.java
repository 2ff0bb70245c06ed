package feedwitness.engine;

import feedwitness.quantity.Stamp;
import java.util.Optional;

/**
 * What somebody said runs at a point.
 *
 * @param strength name of the strength; empty unless {@link What#STRENGTH}
 * @param who said so; empty while unsaid
 * @param since when it was said; empty while unsaid
 */
public record Running(What what, String strength, String who, Optional<Stamp> since) {
  static final Running UNSAID = new Running(What.UNSAID, "", "", Optional.empty());

  /** What can run. */
  public enum What {
    STRENGTH,
    PLAIN_WATER,
    NOTHING,
    /** Nobody has said. */
    UNSAID
  }
}
