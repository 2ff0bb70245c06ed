package feedwitness.acquire;

import feedwitness.quantity.Stamp;
import feedwitness.sample.Sample;
import java.util.function.Function;

/** Takes samples off the wire threads. */
public interface SampleSink {

  /**
   * Stamps a sample with the time of this call and takes it over; never waits. Safe for many
   * threads; order of stamps is order of calls.
   */
  void accept(Function<Stamp, Sample> atArrival);
}
