package feedwitness.engine;

import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftStanding;

/**
 * A feed line as it stands.
 *
 * @param line as it is watched: with the strengths of the nursery where it lists none of its own
 * @param told what stands and needs to be known, in one sentence; empty if nothing
 */
public record FeedLineStatus(FeedLine line, DriftStanding standing, String told) {}
