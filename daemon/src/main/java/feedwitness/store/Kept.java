package feedwitness.store;

import feedwitness.quality.Flags;
import feedwitness.sample.Sample;

/**
 * What is kept of a measurement: the sample untouched, its flags, and which basis made it. All
 * numbers are made again from these.
 *
 * @param basis number of the basis in the file
 */
record Kept(Sample sample, Flags flags, int basis) {}
