package feedwitness.sample;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;

/** What an instrument said (VIM 4.1), or what a person read off it. Never altered. */
public record Indication(PointName point, Stamp stamp, Reading reading, Origin origin)
    implements Sample {

  /** How the indication came here. */
  public enum Origin {
    /** Read from a probe by this service. */
    PROBE,
    /** Read by a person and typed in. */
    TYPED,
    /** Recorded by something else and brought in from a file; of its own time, never the latest. */
    IMPORTED
  }
}
