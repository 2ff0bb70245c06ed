package feedwitness.publish.access;

/**
 * Who asks.
 *
 * @param name as it stands in records: {@code desk}, {@code command line} or the device's own
 * @param device identifier of a paired device; empty for others
 */
public record Caller(Kind kind, String name, String device, Role role) {
  /** The browser on the machine itself: whoever sits there could do anything anyway. */
  public static final Caller DESK = new Caller(Kind.DESK, "desk", "", Role.SEE_AND_ACT);

  /** A command that knows the access key. */
  public static final Caller COMMAND_LINE =
      new Caller(Kind.COMMAND_LINE, "command line", "", Role.SEE_AND_ACT);

  /** How the caller is known. */
  public enum Kind {
    DESK,
    COMMAND_LINE,
    DEVICE
  }

  /** A paired device. */
  public static Caller of(Device device) {
    return new Caller(Kind.DEVICE, device.name(), device.id(), device.role());
  }

  /** Whether it may change things. */
  public boolean mayAct() {
    return role == Role.SEE_AND_ACT;
  }
}
