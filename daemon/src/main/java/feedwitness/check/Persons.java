package feedwitness.check;

import java.util.Optional;

/** Limits of what people type, so that all of it can be kept. */
final class Persons {
  static final int LONGEST_NAME = 80;
  static final int LONGEST_NOTE = 1000;

  private Persons() {}

  /** What is wrong with a name or a note; empty if both can be kept. */
  static Optional<String> problem(String author, String note) {
    if (author.isBlank() || author.length() > LONGEST_NAME) {
      return Optional.of("say who does it, 1 to %d characters".formatted(LONGEST_NAME));
    }
    return note.length() > LONGEST_NOTE
        ? Optional.of(
            "the note has %d characters, at most %d fit; shorten it"
                .formatted(note.length(), LONGEST_NOTE))
        : Optional.empty();
  }
}
