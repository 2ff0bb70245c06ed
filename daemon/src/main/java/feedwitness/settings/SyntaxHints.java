package feedwitness.settings;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says what is likely meant where a line is no TOML: the slips people make who never saw TOML. */
final class SyntaxHints {
  static final String BAD_UNICODE = "Invalid unicode escape";
  private static final String FORM =
      "look here and on the line above for a missing quotation mark, bracket or =";
  private static final Pattern TWICE =
      Pattern.compile("(.+) previously defined at line (\\d+), column \\d+");
  private static final Pattern NOT_ARRAY =
      Pattern.compile("(.+) is not an array \\(.*line (\\d+).*");
  private static final Pattern VALUE_WITH_UNIT =
      Pattern.compile("[^=]*=\\s*([-+0-9.,]+\\s*[\\p{L}µ°%][^#\"']*?)\\s*(#.*)?");
  private static final Pattern BARE_TEXT =
      Pattern.compile("\\s*([^=\\s]+)\\s*=\\s*([^\"'#\\s\\[{][^#\"']*?)\\s*(#.*)?");

  private static final List<Rule> RULES =
      List.of(
          SyntaxHints::twice,
          SyntaxHints::decimalComma,
          SyntaxHints::typographicMarks,
          SyntaxHints::backslash,
          SyntaxHints::colon,
          SyntaxHints::doubleBracket,
          SyntaxHints::truth,
          SyntaxHints::numberForm,
          SyntaxHints::valueWithUnit,
          SyntaxHints::bareText,
          SyntaxHints::openMark);

  private SyntaxHints() {}

  record Hint(String message, String remedy) {}

  /**
   * One slip; empty if it is another. {@code at} is the rest of the line from the odd character.
   */
  private interface Rule {
    Optional<Hint> look(String line, int column, String at, String parser);
  }

  /**
   * What to tell.
   *
   * @param column of the odd character, from 1
   * @param parser what the parser says
   */
  static Hint of(String line, int column, String parser) {
    int start = Math.min(Math.max(column - 1, 0), line.length());
    String at = line.substring(start);
    return RULES.stream()
        .flatMap(rule -> rule.look(line, start, at, parser).stream())
        .findFirst()
        .orElseGet(() -> new Hint("is no TOML: " + oneLine(parser), FORM));
  }

  private static Optional<Hint> twice(String line, int column, String at, String parser) {
    Matcher twice = TWICE.matcher(parser);
    Matcher notArray = NOT_ARRAY.matcher(parser);
    if (notArray.matches() || (twice.matches() && twice.group(1).equals("point"))) {
      Matcher match = notArray.matches() ? notArray : twice;
      return hint(
          "'%s' was begun otherwise on line %s".formatted(match.group(1), match.group(2)),
          "write every measuring point as [[point]], with two brackets on both sides");
    }
    return twice.matches()
        ? hint(
            "'%s' stands here again, first on line %s".formatted(twice.group(1), twice.group(2)),
            "keep one of them")
        : Optional.empty();
  }

  private static Optional<Hint> decimalComma(String line, int column, String at, String parser) {
    boolean between =
        at.startsWith(",")
            && at.length() > 1
            && Character.isDigit(at.charAt(1))
            && column > 0
            && Character.isDigit(line.charAt(column - 1));
    if (!between) {
      return Optional.empty();
    }
    String before = line.substring(line.lastIndexOf('=', column) + 1, column).strip();
    String after = at.substring(1).split("[^0-9]", 2)[0];
    return hint(
        "%s,%s has a decimal comma".formatted(before, after),
        "write %s.%s with a point".formatted(before, after));
  }

  private static Optional<Hint> typographicMarks(
      String line, int column, String at, String parser) {
    return !at.isEmpty() && "“”„‟‘’‚«»´`".indexOf(at.charAt(0)) >= 0
        ? hint(
            "%s is a typographic quotation mark".formatted(at.charAt(0)),
            "write the straight one, \", before and after the text")
        : Optional.empty();
  }

  private static Optional<Hint> backslash(String line, int column, String at, String parser) {
    return parser.startsWith("Invalid escape") || parser.startsWith(BAD_UNICODE)
        ? hint(
            "\" \" gives a backslash a meaning of its own",
            "put the text in single quotation marks, '…', or write every backslash twice")
        : Optional.empty();
  }

  private static Optional<Hint> colon(String line, int column, String at, String parser) {
    return at.startsWith(":") && !line.substring(0, column).contains("=")
        ? hint("a colon stands between key and value", "write = instead of :")
        : Optional.empty();
  }

  private static Optional<Hint> doubleBracket(String line, int column, String at, String parser) {
    return line.strip().startsWith("[") && !line.contains("=") && parser.contains("]]")
        ? hint(
            "'%s' has two brackets on one side and one on the other".formatted(line.strip()),
            "write [[point]] for a measuring point, [nursery] for a table there is one of")
        : Optional.empty();
  }

  private static Optional<Hint> truth(String line, int column, String at, String parser) {
    String word = at.split("[^A-Za-z]", 2)[0];
    boolean yes = List.of("True", "TRUE", "yes", "Yes", "on").contains(word);
    boolean no = List.of("False", "FALSE", "no", "No", "off").contains(word);
    return yes || no
        ? hint(
            "'%s' is neither true nor false".formatted(word),
            "write %s, in lower case".formatted(yes ? "true" : "false"))
        : Optional.empty();
  }

  private static Optional<Hint> numberForm(String line, int column, String at, String parser) {
    String value = line.substring(line.indexOf('=') + 1).split("#", 2)[0].strip();
    if (value.matches("[-+]?\\.[0-9]+")) {
      return hint("%s has nothing before its point".formatted(value), "write 0 before the point");
    }
    if (value.matches("[-+]?[0-9]+\\.")) {
      return hint("%s has nothing after its point".formatted(value), "write 0 after the point");
    }
    return value.matches("[-+]?0[0-9]+")
        ? hint("%s begins with 0".formatted(value), "write the number without leading zeros")
        : Optional.empty();
  }

  private static Optional<Hint> valueWithUnit(String line, int column, String at, String parser) {
    Matcher match = VALUE_WITH_UNIT.matcher(line);
    return match.matches()
        ? hint(
            "%s is a number with a unit".formatted(match.group(1)),
            "put it in quotation marks if the key takes a unit, otherwise leave the unit out")
        : Optional.empty();
  }

  private static Optional<Hint> bareText(String line, int column, String at, String parser) {
    Matcher match = BARE_TEXT.matcher(line);
    return match.matches() && column >= match.start(2) && !parser.contains("expected =")
        ? hint(
            "%s stands without quotation marks".formatted(match.group(2)),
            "write %s = \"%s\"".formatted(match.group(1), match.group(2)))
        : Optional.empty();
  }

  private static Optional<Hint> openMark(String line, int column, String at, String parser) {
    return parser.contains("end of line") || parser.contains("end of input")
        ? hint(
            parser.contains("\" or") || parser.contains("' or")
                ? "a text has no quotation mark at its end"
                : "the line ends too soon: " + oneLine(parser),
            "write key = value, text in quotation marks")
        : Optional.empty();
  }

  private static Optional<Hint> hint(String message, String remedy) {
    return Optional.of(new Hint(oneLine(message), oneLine(remedy)));
  }

  private static String oneLine(String text) {
    String clipped = text.length() > 200 ? text.substring(0, 200) + "…" : text;
    return clipped.replaceAll("\\p{Cntrl}", "·");
  }
}
