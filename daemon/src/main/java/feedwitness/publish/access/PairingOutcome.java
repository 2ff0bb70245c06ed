package feedwitness.publish.access;

import java.time.Duration;

/** What came of typing a code. */
public sealed interface PairingOutcome {
  /** Let in; {@code token} is given away this once. */
  record Paired(Device device, String token) implements PairingOutcome {
    /** Without the token. */
    @Override
    public String toString() {
      return "Paired[" + device + "]";
    }
  }

  /** {@code field} is at fault, or none if empty. */
  record Refused(String field, String message) implements PairingOutcome {}

  /** Too many wrong guesses: none is looked at before {@code left} is over. */
  record TooMany(Duration left) implements PairingOutcome {}
}
