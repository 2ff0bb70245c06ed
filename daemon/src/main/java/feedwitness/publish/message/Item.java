package feedwitness.publish.message;

import feedwitness.site.Urgency;

/**
 * One thing to be told.
 *
 * @param key names it on record: the id of the notice, and after {@code ~} how often nobody
 *     answered
 * @param notice what happened
 * @param escalation how often it was told before without an answer; 0 the first time
 */
record Item(String key, Notice notice, int escalation) {
  private static final char AGAIN = '~';

  static Item of(Notice notice) {
    return new Item(notice.id(), notice, 0);
  }

  /** The same alarm once more, because nobody answered. */
  static Item escalated(Notice notice, int times) {
    return new Item(notice.id() + AGAIN + times, notice, times);
  }

  /** The notice's id within a key. */
  static String notice(String key) {
    int again = key.lastIndexOf(AGAIN);
    return again < 0 ? key : key.substring(0, again);
  }

  /** The escalation within a key. */
  static int escalation(String key) {
    int again = key.lastIndexOf(AGAIN);
    try {
      return again < 0 ? 0 : Integer.parseInt(key.substring(again + 1));
    } catch (NumberFormatException ofTheNotice) {
      return 0;
    }
  }

  Urgency urgency() {
    return notice.urgency();
  }
}
