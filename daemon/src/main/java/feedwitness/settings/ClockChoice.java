package feedwitness.settings;

import java.util.Locale;

/** When the clock of the machine is to be believed. */
public enum ClockChoice {
  /** Once something has set it: a time service, or the kernel says so. */
  SYNCHRONISED,
  /** From the start. */
  ALWAYS;

  /**
   * Reads the word of the configuration.
   *
   * @throws IllegalArgumentException if it is neither
   */
  static ClockChoice parse(String text) {
    for (ClockChoice choice : values()) {
      if (choice.text().equals(text)) {
        return choice;
      }
    }
    throw new IllegalArgumentException("'%s' is neither synchronised nor always".formatted(text));
  }

  String text() {
    return name().toLowerCase(Locale.ROOT);
  }
}
