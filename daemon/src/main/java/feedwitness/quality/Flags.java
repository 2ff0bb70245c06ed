package feedwitness.quality;

import java.util.ArrayList;
import java.util.List;

/**
 * An immutable set of flags.
 *
 * @param bits as kept in the store; bits without a flag of this version are carried along untouched
 */
public record Flags(long bits) {
  public static final Flags NONE = new Flags(0);

  private static final QualityFlag[] ALL = QualityFlag.values();

  private static final long OF_TEMPERATURE =
      of(
              QualityFlag.TEMPERATURE_IMPOSSIBLE,
              QualityFlag.TEMPERATURE_JUMP,
              QualityFlag.TEMPERATURE_ERRATIC,
              QualityFlag.TEMPERATURE_STUCK,
              QualityFlag.TEMPERATURE_UNLIKE_NEIGHBOUR)
          .bits;

  public static Flags of(QualityFlag... flags) {
    long bits = 0;
    for (QualityFlag flag : flags) {
      bits |= flag.mask();
    }
    return new Flags(bits);
  }

  public Flags with(QualityFlag flag) {
    return has(flag) ? this : new Flags(bits | flag.mask());
  }

  public Flags with(Flags others) {
    return (others.bits | bits) == bits ? this : new Flags(bits | others.bits);
  }

  /**
   * With flags that later readings gave reason to add: what is said of a number does not go to a
   * reading that had none.
   */
  public Flags withLater(Flags later) {
    long added = later.bits;
    if (has(QualityFlag.MISSING) || has(QualityFlag.BOTH_ZERO)) {
      return this;
    }
    if (has(QualityFlag.CONDUCTIVITY_MISSING)) {
      added &= OF_TEMPERATURE;
    }
    if (has(QualityFlag.TEMPERATURE_MISSING)) {
      added &= ~OF_TEMPERATURE;
    }
    return with(new Flags(added));
  }

  public boolean has(QualityFlag flag) {
    return (bits & flag.mask()) != 0;
  }

  /** Whether any of them is set here. */
  public boolean hasAny(Flags others) {
    return (bits & others.bits) != 0;
  }

  public boolean isEmpty() {
    return bits == 0;
  }

  /** In the order of declaration. */
  public List<QualityFlag> list() {
    List<QualityFlag> list = new ArrayList<>();
    for (QualityFlag flag : ALL) {
      if (has(flag)) {
        list.add(flag);
      }
    }
    return list;
  }

  /** The worst any flag says; GOOD without flags. */
  public Quality worst() {
    Quality worst = Quality.GOOD;
    for (QualityFlag flag : ALL) {
      if (has(flag) && flag.quality().compareTo(worst) > 0) {
        worst = flag.quality();
      }
    }
    return worst;
  }
}
