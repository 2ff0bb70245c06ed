package feedwitness.settings;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/** Opens TOML files; what is no TOML at all is told here. */
final class TomlFile {
  /** Far above any real configuration; keeps the time to read one bounded. */
  static final int LONGEST = 256 * 1024;

  private static final Pattern BAD_ESCAPE =
      Pattern.compile("\\\\(?:u(?![0-9a-fA-F]{4})|U(?![0-9a-fA-F]{8}))");

  private TomlFile() {}

  /** The file's root table, as far as it could be read; empty if there is nothing to look at. */
  static Optional<Section> read(Path file, Set<String> known, Problems problems) {
    return text(file, problems).flatMap(text -> parse(file, text, known, problems));
  }

  static Optional<Section> parse(Path file, String text, Set<String> known, Problems problems) {
    // Some editors begin a file with an invisible byte order mark: encoding, not content.
    String content = text.startsWith("\uFEFF") ? text.substring(1) : text;
    List<String> lines = Arrays.asList(content.split("\r?\n", -1));
    TomlParseResult result;
    try {
      result = Toml.parse(content);
    } catch (StackOverflowError tooDeep) {
      // The parser recurses into nested brackets; it keeps no state, so going on is safe.
      problems.add(
          file,
          Spot.START,
          "",
          "brackets are nested too deeply to be read",
          "a configuration needs no more than two levels; look for a bracket that is never closed");
      return Optional.empty();
    } catch (AssertionError badEscape) {
      // With Java assertions on, the parser trips over a damaged escape of a character before it
      // can report it.
      Spot spot = badEscape(lines);
      SyntaxHints.Hint hint =
          SyntaxHints.of(lines.get(spot.line() - 1), spot.column(), SyntaxHints.BAD_UNICODE);
      problems.add(file, spot, "", hint.message(), hint.remedy());
      return Optional.empty();
    }
    Set<Integer> broken = new HashSet<>();
    for (TomlParseError error : result.errors()) {
      Spot spot = Spot.of(error.position());
      broken.add(spot.line());
      String line = spot.line() <= lines.size() ? lines.get(spot.line() - 1) : "";
      SyntaxHints.Hint hint = SyntaxHints.of(line, spot.column(), message(error));
      problems.add(file, spot, "", hint.message(), hint.remedy());
    }
    Source source = new Source(file, broken, problems);
    return Optional.of(new Section(source, result, Spot.START, "", known));
  }

  private static Spot badEscape(List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      Matcher escape = BAD_ESCAPE.matcher(lines.get(i));
      if (escape.find()) {
        return new Spot(i + 1, escape.start() + 1);
      }
    }
    return Spot.START;
  }

  private static String message(TomlParseError error) {
    String message = error.getMessage();
    return message == null ? "cannot be read" : message;
  }

  private static Optional<String> text(Path file, Problems problems) {
    try {
      if (Files.size(file) > LONGEST) {
        problems.add(
            file,
            Spot.START,
            "",
            "%d octets are more than the %d a configuration may have"
                .formatted(Files.size(file), LONGEST),
            "check that this is the right file");
        return Optional.empty();
      }
      return Optional.of(Files.readString(file, StandardCharsets.UTF_8));
    } catch (CharacterCodingException e) {
      problems.add(
          file,
          Spot.START,
          "",
          "is not UTF-8 text",
          "save it as UTF-8 in the editor (signs such as µ, °, ä are the usual cause)");
    } catch (IOException e) {
      problems.add(file, Spot.START, "", "cannot be read: " + reason(e), remedy(e));
    }
    return Optional.empty();
  }

  /** What an exception means, in words. */
  static String reason(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "there is no such file";
    }
    if (e instanceof AccessDeniedException) {
      return "this user may not open it";
    }
    String message = e.getMessage();
    return message == null ? e.getClass().getSimpleName() : message;
  }

  private static String remedy(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "let the user the service runs as read it, for example with chmod or chgrp";
    }
    return "check the name and the folder";
  }
}
