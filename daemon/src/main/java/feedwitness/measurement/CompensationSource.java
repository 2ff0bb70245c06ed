package feedwitness.measurement;

import feedwitness.quantity.PointName;
import java.time.Instant;

/**
 * Says what refers the readings of a point to 25 °C at a time. The answer is a value: it carries
 * its factor, its own standard uncertainty and, within {@link Basis#toText()}, its text, so that a
 * number can be made again after the source has long changed its mind. Pure for a given
 * configuration; asked once a sample, so it must be quick.
 *
 * <p>None, linear, ISO 7888 and KCl come from the configuration. A source that knows what is
 * dissolved answers {@link TemperatureCompensation.Fitted}.
 */
@FunctionalInterface
public interface CompensationSource {

  /** In force for {@code point} at {@code at}, wall time. */
  TemperatureCompensation of(PointName point, Instant at);
}
