package feedwitness.simulate;

import java.util.Random;

/** Makes every random stream of the nursery from one seed; streams do not disturb each other. */
record Chance(long seed) {

  /** The stream of this name. */
  Random stream(String name) {
    return stream(name, 0);
  }

  /** The stream of this name and number, for example of one day. */
  Random stream(String name, long number) {
    long mixed = seed * 0x9E3779B97F4A7C15L + name.hashCode() * 0xC2B2AE3D27D4EB4FL;
    mixed ^= (number + 1) * 0x165667B19E3779F9L;
    mixed = (mixed ^ (mixed >>> 32)) * 0xD6E8FEB86659FD93L;
    return new Random(mixed ^ (mixed >>> 29));
  }
}
