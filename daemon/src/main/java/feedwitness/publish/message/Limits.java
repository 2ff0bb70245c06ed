package feedwitness.publish.message;

import java.time.Duration;

/**
 * How long a receiver may take.
 *
 * @param connect until it answers at all
 * @param answer between any two signs of life
 * @param whole for one attempt, whatever the receiver does
 * @param octets of answers taken in, in all
 */
record Limits(Duration connect, Duration answer, Duration whole, int octets) {
  static final Limits USUAL =
      new Limits(
          Duration.ofSeconds(10), Duration.ofSeconds(20), Duration.ofSeconds(60), 256 * 1024);
}
