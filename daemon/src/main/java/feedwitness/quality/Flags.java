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
    Flags set = NONE;
    for (QualityFlag flag : flags) {
      set = set.with(flag);
    }
    return set;
  }

  public Flags with(QualityFlag flag) {
    return new Flags(bits | 1L << flag.bit());
  }

  public Flags with(Flags others) {
    return new Flags(bits | others.bits);
  }

  public boolean has(QualityFlag flag) {
    return (bits & 1L << flag.bit()) != 0;
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
