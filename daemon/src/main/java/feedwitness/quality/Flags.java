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

  public boolean has(QualityFlag flag) {
    return (bits & flag.mask()) != 0;
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
