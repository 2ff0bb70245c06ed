package feedwitness.simulate;

import java.time.ZoneId;

/**
 * What makes one nursery differ from another.
 *
 * @param seed of every random number; the same seed gives the same octets
 * @param zone of the nursery's clock on the wall
 * @param schedule what happens when, and the plant's numbers
 */
public record NurseryOptions(long seed, ZoneId zone, Schedule schedule) {}
