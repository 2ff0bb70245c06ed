package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.util.Arrays;
import java.util.Random;

/** What interference and a wrong baud rate make of a wire. */
final class Noise {
  private static final int BURST_MIN = 3;
  private static final int BURST_MAX = 40;

  private final Random random;

  Noise(Random random) {
    this.random = random;
  }

  /** Octets without meaning. */
  Octets burst() {
    byte[] octets = new byte[BURST_MIN + random.nextInt(BURST_MAX - BURST_MIN + 1)];
    random.nextBytes(octets);
    return Octets.of(octets);
  }

  /** The same message with one to three octets changed, sometimes cut short. */
  Octets damage(Octets message) {
    byte[] octets = message.toArray();
    int changes = 1 + random.nextInt(3);
    int at = random.nextInt(octets.length);
    for (int i = 0; i < changes; i++) {
      octets[(at + i) % octets.length] ^= (byte) (1 + random.nextInt(255));
    }
    boolean cut = octets.length > 1 && random.nextInt(4) == 0;
    return Octets.of(cut ? Arrays.copyOf(octets, 1 + random.nextInt(octets.length - 1)) : octets);
  }
}
