package feedwitness.acquire;

import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Sample;
import java.util.List;
import java.util.function.Function;

/** Takes samples off the wire threads. */
public interface SampleSink {

  /**
   * Stamps a sample with the time of this call and takes it over; never waits. Safe for many
   * threads; order of stamps is order of calls.
   */
  void accept(Function<Stamp, Sample> atArrival);

  /**
   * The same with the messages the sample was read from, for whoever wants to see them again; a
   * sink may forget them.
   */
  default void accept(Function<Stamp, Sample> atArrival, List<Octets> messages) {
    accept(atArrival);
  }
}
