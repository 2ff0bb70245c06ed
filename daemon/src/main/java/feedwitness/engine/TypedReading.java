package feedwitness.engine;

import feedwitness.quantity.PointName;
import feedwitness.sample.Reading;

/**
 * A reading taken by hand.
 *
 * @param reading as read off the meter
 * @param compensated how the meter had referred it
 */
public record TypedReading(PointName point, Reading reading, Compensated compensated) {

  /** What the handheld meter did about temperature. */
  public enum Compensated {
    /** Shows conductivity at the temperature of the solution. */
    NOT_AT_ALL,
    /** Already shows conductivity at 25 °C. */
    TO_25
  }
}
