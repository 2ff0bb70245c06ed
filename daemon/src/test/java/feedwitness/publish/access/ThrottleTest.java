package feedwitness.publish.access;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.quantity.TimeSource;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Guessing is slow whoever does it, and costs the service nothing. */
class ThrottleTest {
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 1_000);
  private final Throttle throttle =
      new Throttle(
          new TimeSource() {
            @Override
            public long monotonicNanos() {
              return nanos.get();
            }

            @Override
            public Instant wall() {
              return Instant.EPOCH;
            }
          });

  private static InetAddress at(String address) throws UnknownHostException {
    return InetAddress.getByName(address);
  }

  private void wait(Duration duration) {
    nanos.addAndGet(duration.toNanos());
  }

  @Test
  void stopsAnAddressAfterFiveUntilTheFirstIsTenMinutesOld() throws Exception {
    for (int i = 0; i < Throttle.PER_ADDRESS; i++) {
      assertEquals(Duration.ZERO, throttle.wait(at("192.0.2.7")));
      throttle.missed(at("192.0.2.7"));
      wait(Duration.ofMinutes(1));
    }
    assertEquals(Duration.ofMinutes(5), throttle.wait(at("192.0.2.7")));
    assertEquals(Duration.ZERO, throttle.wait(at("192.0.2.8")));
    wait(Duration.ofMinutes(5));
    assertEquals(Duration.ZERO, throttle.wait(at("192.0.2.7")));
  }

  @Test
  void takesAWholeIpv6NetworkForOne() throws Exception {
    for (int i = 0; i < Throttle.PER_ADDRESS; i++) {
      throttle.missed(at("2001:db8:0:1::" + i));
    }
    assertEquals(Throttle.WINDOW, throttle.wait(at("2001:db8:0:1:ffff::9")));
    assertEquals(Duration.ZERO, throttle.wait(at("2001:db8:0:2::1")));
  }

  @Test
  void stopsAllAfterThirtyAndRemembersNoMore() throws Exception {
    for (int i = 0; i < 10_000; i++) {
      throttle.missed(at("198.51.%d.%d".formatted(i / 250, i % 250)));
    }
    assertEquals(Throttle.OVERALL, throttle.remembered());
    assertEquals(Throttle.WINDOW, throttle.wait(at("192.0.2.7")));
    wait(Throttle.WINDOW);
    assertEquals(Duration.ZERO, throttle.wait(at("192.0.2.7")));
    assertEquals(0, throttle.remembered());
  }
}
