package feedwitness.sample;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.quantity.TemperatureUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A golden capture: octets in, indications and rejections out. Format: device-profiles/README. */
public record Capture(String name, List<Step> steps) {
  public Capture {
    steps = List.copyOf(steps);
  }

  /** One line of a capture. */
  public sealed interface Step {
    /** {@code > hex}: sent to the instrument. */
    record Sent(Octets octets) implements Step {}

    /** {@code < hex}: received from it. */
    record Received(Octets octets) implements Step {}

    /** {@code ~}: the wire stayed quiet for the longest reply time. */
    record Quiet() implements Step {}

    /** {@code = 351.2 µS/cm 12.41 °C}: expected reading; NaN for no number. */
    record Reads(Reading reading) implements Step {}

    /** {@code ! noise}: expected rejection or refusal, in lower case with dashes. */
    record Rejects(String reason) implements Step {}

    /** {@code . heading}: expected to be passed over without a fault. */
    record PassesOver() implements Step {}
  }

  /** Reads a capture file. */
  public static Capture read(Path file) throws IOException {
    List<Step> steps = new ArrayList<>();
    int number = 0;
    for (String line : Files.readAllLines(file)) {
      number++;
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      try {
        steps.add(step(line.charAt(0), line.substring(1).strip()));
      } catch (IllegalArgumentException e) {
        throw new IllegalArgumentException(file + ":" + number + ": " + e.getMessage(), e);
      }
    }
    return new Capture(String.valueOf(file.getFileName()).replace(".capture", ""), steps);
  }

  private static Step step(char kind, String rest) {
    return switch (kind) {
      case '>' -> new Step.Sent(Octets.ofHex(rest));
      case '<' -> new Step.Received(Octets.ofHex(rest));
      case '~' -> new Step.Quiet();
      case '=' -> new Step.Reads(reading(rest));
      case '!' -> new Step.Rejects(rest.toLowerCase(Locale.ROOT));
      case '.' -> new Step.PassesOver();
      default -> throw new IllegalArgumentException("a line begins with one of > < ~ = ! . #");
    };
  }

  private static Reading reading(String text) {
    String[] words = text.split("\\s+", -1);
    if (words.length != 4 && words.length != 5) {
      throw new IllegalArgumentException("'" + text + "' is not: number unit number unit contact");
    }
    Contact contact =
        words.length == 4 ? Contact.NONE : Contact.valueOf(words[4].toUpperCase(Locale.ROOT));
    return new Reading(
        Double.parseDouble(words[0]),
        ConductivityUnit.parse(words[1]).orElseThrow(IllegalArgumentException::new),
        Double.parseDouble(words[2]),
        TemperatureUnit.parse(words[3]).orElseThrow(IllegalArgumentException::new),
        contact);
  }
}
