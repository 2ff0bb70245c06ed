package feedwitness.publish.message;

/** What came of an attempt. The words are for people and hold no secret. */
sealed interface Delivery {
  String said();

  /** The receiver took it on. */
  record Delivered(String said) implements Delivery {}

  /** Not now: tried again, sooner at first, more rarely later. */
  record Later(String said) implements Delivery {}

  /** The receiver will never take this message: not tried again. */
  record Refused(String said) implements Delivery {}

  /**
   * Somebody has to mend something (a password, a certificate, an address): tried again, but at
   * once as rarely as it gets, because servers lock out who knocks often.
   */
  record Misconfigured(String said) implements Delivery {}
}
