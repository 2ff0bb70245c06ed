package feedwitness.feed;

import java.util.LinkedHashMap;
import java.util.Map;

/** How often a feed is given; a strength means nothing without it. */
public enum Frequency {
  EVERY_WATERING("every watering"),
  TWICE_A_WEEK("twice a week"),
  WEEKLY("weekly"),
  NOW_AND_THEN("now and then");

  private final String words;

  Frequency(String words) {
    this.words = words;
  }

  /** As printed. */
  public String words() {
    return words;
  }

  static Map<String, Frequency> choices() {
    Map<String, Frequency> choices = new LinkedHashMap<>();
    for (Frequency each : values()) {
      choices.put(each.words.replace(' ', '-'), each);
    }
    return choices;
  }
}
