package feedwitness.site;

import feedwitness.quantity.PointName;
import java.util.Optional;

/**
 * A strength that is fed here, such as "growing on".
 *
 * @param name short, unique: 1 to 32 of a-z, 0-9, - and _
 * @param title for people
 * @param point where it is fed; empty for everywhere
 * @param milliSiemensPerCm at 25 °C, above {@code tolerance}
 * @param of what the number counts
 * @param tolerance limits lie so far below and above, mS/cm, above 0
 */
public record Strength(
    String name,
    String title,
    Optional<PointName> point,
    double milliSiemensPerCm,
    StrengthOf of,
    double tolerance) {
  /** Where nothing else is said; also for strengths that were recognised. */
  public static final double USUAL_TOLERANCE = 0.15;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException naming value and limit
   */
  public Strength {
    if (!(tolerance > 0 && milliSiemensPerCm > tolerance)) {
      throw new IllegalArgumentException(
          "strength %s mS/cm is not above its tolerance %s mS/cm; write a smaller tolerance"
              .formatted(milliSiemensPerCm, tolerance));
    }
  }

  /** Limits around it, with a third of the tolerance as deadband. */
  public Band band() {
    return new Band(milliSiemensPerCm - tolerance, milliSiemensPerCm + tolerance, tolerance / 3);
  }

  /** Whether it is fed at a point. */
  public boolean isFedAt(PointName where) {
    return point.isEmpty() || point.get().equals(where);
  }
}
