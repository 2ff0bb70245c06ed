package feedwitness.sample;

/** What a decoder made of a whole message. */
public sealed interface DecodeOutcome {

  /**
   * A reading.
   *
   * @param remark empty, or what people should know of it: which number the instrument did not send
   */
  record Decoded(Reading reading, String remark) implements DecodeOutcome {}

  /**
   * No reading can be had from the message.
   *
   * @param cause {@link Missing.Cause#UNREADABLE} if we do not understand it, {@link
   *     Missing.Cause#INSTRUMENT_REFUSED} if the instrument says that it cannot answer
   * @param text for people: item, value, limit, remedy
   */
  record Refused(Missing.Cause cause, String text) implements DecodeOutcome {}

  /** No reading, and no fault either: a heading, a prompt. */
  record Ignored(String text) implements DecodeOutcome {}
}
