package feedwitness.publish;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Constants as written outside: lower case with dashes. */
final class Codes {
  private Codes() {}

  static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Every constant by its code, in the order of declaration. */
  static <E extends Enum<E>> Map<String, E> all(Class<E> type) {
    Map<String, E> all = new LinkedHashMap<>();
    for (E constant : type.getEnumConstants()) {
      all.put(of(constant), constant);
    }
    return all;
  }
}
