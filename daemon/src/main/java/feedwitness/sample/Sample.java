package feedwitness.sample;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;

/** What came, or failed to come, from a measuring point at a time. */
public sealed interface Sample permits Indication, Missing {
  PointName point();

  Stamp stamp();
}
