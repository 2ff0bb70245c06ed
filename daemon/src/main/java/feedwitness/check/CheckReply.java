package feedwitness.check;

import java.util.List;

/**
 * What a step of a check answers.
 *
 * @param accepted whether it was done; if not, nothing has changed
 * @param evidence to be kept, in order, before anybody is told
 * @param words what happened or why not, and what to do next
 */
public record CheckReply(boolean accepted, List<CheckEvidence> evidence, String words) {
  public CheckReply {
    evidence = List.copyOf(evidence);
  }

  static CheckReply done(String words, CheckEvidence... evidence) {
    return new CheckReply(true, List.of(evidence), words);
  }

  static CheckReply refused(String words) {
    return new CheckReply(false, List.of(), words);
  }
}
