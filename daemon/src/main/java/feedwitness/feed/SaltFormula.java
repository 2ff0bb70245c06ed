package feedwitness.feed;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds a straight salt by its name or by its formula with water of crystallisation. */
final class SaltFormula {
  private static final Pattern HYDRATE =
      Pattern.compile("(.+?)·([0-9]{0,2}(?:\\.[0-9])?)H2O", Pattern.CASE_INSENSITIVE);

  private static final String SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉";

  private SaltFormula() {}

  /**
   * A salt.
   *
   * @throws IllegalArgumentException {@code reason; remedy} where it is none we know
   */
  static Salt find(String text) {
    Optional<Salt> named = Salts.byId(text.strip().toLowerCase(Locale.ROOT).replace(' ', '-'));
    if (named.isPresent()) {
      return named.get();
    }
    String plain = normal(text);
    Matcher hydrate = HYDRATE.matcher(plain);
    boolean wet = hydrate.matches();
    String base = wet ? hydrate.group(1) : plain;
    String count = wet ? hydrate.group(2) : "0";
    double water = count.isEmpty() ? 1 : Double.parseDouble(count);
    List<Salt> hydrates = Salts.byBase(base);
    return hydrates.stream()
        .filter(salt -> salt.hydrate() == water)
        .findFirst()
        .orElseThrow(() -> unknown(base, hydrates));
  }

  private static IllegalArgumentException unknown(String base, List<Salt> hydrates) {
    if (hydrates.isEmpty()) {
      return new IllegalArgumentException(
          "is no salt we know; give its label instead, or one of %s"
              .formatted(Salts.ALL.stream().map(Salt::id).collect(Collectors.joining(", "))));
    }
    String known = hydrates.stream().map(Salt::formula).collect(Collectors.joining(", "));
    return new IllegalArgumentException(
        "is no hydrate of %s we know; write %s, as the bag says".formatted(base, known)
            + (base.equals("Ca(NO3)2") ? ", or calcium-nitrate for the usual double salt" : ""));
  }

  private static String normal(String text) {
    StringBuilder plain = new StringBuilder();
    for (char c : text.strip().toCharArray()) {
      int subscript = SUBSCRIPTS.indexOf(c);
      if (subscript >= 0) {
        plain.append(subscript);
      } else if (c == '*' || c == '•' || c == '∙' || c == '⋅') {
        plain.append('·');
      } else if (c != ' ') {
        plain.append(c);
      }
    }
    // a point before a number and water is no decimal point: MgSO4.7H2O
    return plain.toString().replaceAll("\\.(?=[0-9]{0,2}H2O$)", "·");
  }
}
