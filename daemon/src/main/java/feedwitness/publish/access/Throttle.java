package feedwitness.publish.access;

import feedwitness.quantity.TimeSource;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Slows guessing down. Only wrong guesses are counted, and none are taken while an address or all
 * together have had theirs, so no more than {@link #OVERALL} are ever remembered.
 */
final class Throttle {
  /** Wrong guesses of one address within {@link #WINDOW}. */
  static final int PER_ADDRESS = 5;

  /** Wrong guesses of all addresses within {@link #WINDOW}: an attacker may have many addresses. */
  static final int OVERALL = 30;

  static final Duration WINDOW = Duration.ofMinutes(10);
  private static final int NETWORK_OCTETS = 8;

  private record Miss(String network, long nanos) {}

  private final TimeSource clock;
  private final Deque<Miss> misses = new ArrayDeque<>(OVERALL);

  Throttle(TimeSource clock) {
    this.clock = clock;
  }

  /** How long the address must wait before it may guess; zero if it may now. */
  synchronized Duration wait(InetAddress address) {
    forget();
    if (misses.size() >= OVERALL) {
      return until(misses.getFirst());
    }
    String network = network(address);
    return misses.stream().filter(miss -> miss.network.equals(network)).count() < PER_ADDRESS
        ? Duration.ZERO
        : until(misses.stream().filter(miss -> miss.network.equals(network)).findFirst());
  }

  /** A wrong guess was made. */
  synchronized void missed(InetAddress address) {
    forget();
    if (misses.size() < OVERALL) {
      misses.addLast(new Miss(network(address), clock.monotonicNanos()));
    }
  }

  /** How many wrong guesses are remembered. */
  synchronized int remembered() {
    return misses.size();
  }

  private Duration until(Optional<Miss> miss) {
    return miss.map(this::until).orElse(Duration.ZERO);
  }

  private Duration until(Miss miss) {
    return WINDOW.minusNanos(clock.monotonicNanos() - miss.nanos);
  }

  private void forget() {
    long now = clock.monotonicNanos();
    while (!misses.isEmpty() && now - misses.getFirst().nanos >= WINDOW.toNanos()) {
      misses.removeFirst();
    }
  }

  /** Whoever has one IPv6 address has 2⁶⁴ of them. */
  private static String network(InetAddress address) {
    byte[] octets = address.getAddress();
    return address instanceof Inet6Address
        ? HexFormat.of().formatHex(octets, 0, NETWORK_OCTETS)
        : HexFormat.of().formatHex(octets);
  }
}
