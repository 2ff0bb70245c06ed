package feedwitness.publish.access;

import java.time.Instant;
import java.util.Optional;

/**
 * A browser that was let in.
 *
 * @param id 8 hexadecimal digits, never given twice
 * @param name unlike any other paired device's
 * @param pairedAt empty while the clock was not to be believed then
 * @param pairedBy who showed it the code
 * @param tokenHash SHA-256 of its token, 64 hexadecimal digits
 */
public record Device(
    String id,
    String name,
    Role role,
    Optional<Instant> pairedAt,
    String pairedBy,
    String tokenHash) {

  Device paired(Optional<Instant> when) {
    return new Device(id, name, role, when, pairedBy, tokenHash);
  }
}
