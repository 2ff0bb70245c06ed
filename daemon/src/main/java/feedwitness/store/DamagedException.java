package feedwitness.store;

/** Kept octets are not what was written. Says what is wrong with them; callers report and go on. */
final class DamagedException extends Exception {
  private static final long serialVersionUID = 1;

  DamagedException(String what) {
    super(what);
  }
}
