package feedwitness.engine;

import feedwitness.ledger.DurableMark;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.Site;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The running service as seen by whoever shows it. Safe for many threads. */
public interface LiveView {

  /** The place as now configured. */
  Site site();

  /** All points in the order of the configuration. */
  List<PointStatus> points();

  /** One point by name. */
  Optional<PointStatus> point(PointName name);

  /**
   * Calls {@code listener} on the engine's thread for every measurement from now on, after {@link
   * #points()} shows it; it must return at once and never throw.
   */
  Subscription subscribe(Consumer<Measurement> listener);

  /** Sends a reading typed by a person down the pipeline. */
  TypedOutcome type(TypedReading reading);

  /**
   * The messages a sample was read from, in their order. Empty if they are no longer remembered
   * ({@link Messages#REMEMBERED} of each point are), or if there never were any.
   */
  List<Octets> messages(PointName point, Stamp stamp);

  /** How the service is. */
  Health health();

  /** The wall clock of the service (a demo may run fast). */
  Instant now();

  /** Ends with {@link #close()}; closing twice is harmless. */
  interface Subscription extends AutoCloseable {
    @Override
    void close();
  }

  /**
   * How the service is.
   *
   * @param trouble everything that keeps it from its work, in words; empty when all is well
   * @param samplesDropped samples lost since the start because a queue was full
   */
  record Health(
      int boot,
      Instant startedAt,
      DurableMark durableThrough,
      List<String> trouble,
      long samplesDropped,
      String version) {
    public Health {
      trouble = List.copyOf(trouble);
    }
  }
}
