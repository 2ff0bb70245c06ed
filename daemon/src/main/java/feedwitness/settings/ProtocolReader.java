package feedwitness.settings;

import feedwitness.profile.Protocol;
import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** The {@code [line]} or {@code [modbus]} table of a profile. */
final class ProtocolReader {
  private static final Set<String> LINE = Set.of("query", "pattern", "ignore", "longest-line");
  private static final Set<String> MODBUS = Set.of("reads");
  private static final Set<String> READ = Set.of("function", "start", "count");
  private static final int DEFAULT_LONGEST_LINE = 256;

  private static final Optional<Octets> NO_QUERY = Optional.empty();

  private ProtocolReader() {}

  static Optional<Protocol> read(Section root) {
    Optional<Protocol> line = root.table("line", LINE).flatMap(ProtocolReader::line);
    Optional<Protocol> modbus = root.table("modbus", MODBUS).flatMap(ProtocolReader::modbus);
    if (root.has("line") && root.has("modbus")) {
      root.problem(
          "modbus", "a profile has [line] or [modbus], not both", "keep the instrument's protocol");
      return Optional.empty();
    }
    if (!root.has("modbus")) {
      root.missing("line", "describe the protocol in a table [line] or [modbus]");
    }
    return line.or(() -> modbus);
  }

  private static Optional<Protocol> line(Section line) {
    line.missing("pattern", "write the regular expression that matches a whole line");
    Optional<Pattern> pattern = regex(line, "pattern");
    Optional<Pattern> ignore = regex(line, "ignore");
    Optional<Octets> query = line.parsedRaw("query", ProtocolReader::query, "use other characters");
    Optional<Integer> longest =
        ProfileReader.or(
            line, "longest-line", DEFAULT_LONGEST_LINE, line.whole("longest-line", 8, 4096));
    boolean whole =
        line.has("query") == query.isPresent() && line.has("ignore") == ignore.isPresent();
    if (!whole || pattern.isEmpty() || longest.isEmpty()) {
      return Optional.empty();
    }
    // Made in steps, so that what a profile refuses is told at the key at fault.
    return line.made(
            "pattern",
            () -> new Protocol.Line(NO_QUERY, pattern.get(), Optional.empty(), longest.get()))
        .flatMap(
            plain ->
                line.made(
                    "ignore",
                    () -> new Protocol.Line(NO_QUERY, pattern.get(), ignore, longest.get())))
        .flatMap(
            plain ->
                line.made(
                    "query", () -> new Protocol.Line(query, pattern.get(), ignore, longest.get())));
  }

  private static Octets query(String text) {
    if (text.chars().anyMatch(c -> c > 0xff)) {
      throw new IllegalArgumentException(
          "'%s' has a character that is not one octet (U+0000 to U+00FF)".formatted(text));
    }
    return Octets.ofText(text);
  }

  private static Optional<Pattern> regex(Section line, String key) {
    return line.text(key)
        .flatMap(
            text -> {
              try {
                return Optional.of(Pattern.compile(text));
              } catch (PatternSyntaxException e) {
                line.problem(
                    key,
                    "%s is no regular expression: %s at character %d of '%s'"
                        .formatted(key, e.getDescription(), e.getIndex() + 1, Values.clip(text)),
                    "mend it there; a bracket meant as itself needs a backslash before it");
                return Optional.empty();
              } catch (StackOverflowError tooDeep) {
                // The regular expression compiler recurses into brackets; it keeps no state.
                line.problem(key, key + " nests brackets too deeply", "simplify it");
                return Optional.empty();
              }
            });
  }

  private static Optional<Protocol> modbus(Section modbus) {
    modbus.missing("reads", "write reads = [ { function = 3, start = 0, count = 4 } ]");
    List<Section> tables = modbus.tables("reads", READ);
    List<Protocol.Read> reads = new ArrayList<>();
    for (Section table : tables) {
      request(table).ifPresent(reads::add);
    }
    if (modbus.has("reads") && tables.isEmpty()) {
      modbus.problem("reads", "'reads' asks for nothing", "write at least one read");
    }
    return tables.isEmpty() || reads.size() < tables.size()
        ? Optional.empty()
        : modbus.made("reads", () -> new Protocol.Modbus(reads));
  }

  private static Optional<Protocol.Read> request(Section read) {
    read.missing("function", "write 3 for holding registers or 4 for input registers");
    read.missing("start", "write the first register, counted from 0");
    read.missing("count", "write how many registers to ask for, 1 to 125");
    Optional<Integer> function = read.whole("function", 3, 4);
    Optional<Integer> start = read.whole("start", 0, 65_535);
    Optional<Integer> count = read.whole("count", 1, 125);
    if (function.isEmpty() || start.isEmpty() || count.isEmpty()) {
      return Optional.empty();
    }
    if (start.get() + count.get() > 65_536) {
      read.problem(
          "count",
          "registers %d to %d go past 65535".formatted(start.get(), start.get() + count.get() - 1),
          "ask for fewer or begin lower");
      return Optional.empty();
    }
    return read.made("start", () -> new Protocol.Read(function.get(), start.get(), count.get()));
  }
}
