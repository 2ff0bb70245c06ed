package feedwitness.publish.access;

import java.util.Arrays;
import java.util.Optional;

/** What a paired device may do. */
public enum Role {
  /** Look at everything the page shows, change nothing. */
  SEE("see"),
  /** Look, and change what can be changed on the page. */
  SEE_AND_ACT("see-and-act");

  private final String code;

  Role(String code) {
    this.code = code;
  }

  /** As written outside. */
  public String code() {
    return code;
  }

  /** By its code. */
  public static Optional<Role> of(String code) {
    return Arrays.stream(values()).filter(role -> role.code.equals(code)).findFirst();
  }
}
