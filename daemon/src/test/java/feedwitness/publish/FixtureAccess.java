package feedwitness.publish;

import feedwitness.publish.access.Access;
import feedwitness.publish.access.AccessKey;
import feedwitness.publish.access.AccessSettings;
import feedwitness.publish.access.AuditTrail;
import feedwitness.publish.access.Devices;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.TimeSource;
import java.net.InetAddress;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A way in for tests. This machine is 127.0.0.1 alone: whoever connects from another address of the
 * loopback network counts as another machine.
 */
final class FixtureAccess {
  private final FixtureBook book;
  private final AtomicLong nanos = new AtomicLong();

  FixtureAccess(FixtureBook book) {
    this.book = book;
  }

  /** Only the desk. */
  Access closed(ListenAddress listen) {
    return access(AccessSettings.desk(listen));
  }

  Access open(ListenAddress listen, List<String> names, AccessKey key, boolean tls, boolean proxy) {
    return access(
        new AccessSettings(
            listen, names, Optional.of(key), tls, proxy, FixtureAccess::isThisMachine));
  }

  private Access access(AccessSettings settings) {
    return new Access(settings, Devices.load(book, book), new AuditTrail(book), clock(), List::of);
  }

  private static boolean isThisMachine(InetAddress address) {
    return address.getHostAddress().equals("127.0.0.1");
  }

  void wait(java.time.Duration duration) {
    nanos.addAndGet(duration.toNanos());
  }

  private TimeSource clock() {
    return new TimeSource() {
      @Override
      public long monotonicNanos() {
        return nanos.get();
      }

      @Override
      public Instant wall() {
        return FixtureNursery.START.plusNanos(nanos.get());
      }
    };
  }
}
