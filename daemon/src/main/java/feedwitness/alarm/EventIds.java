package feedwitness.alarm;

import feedwitness.quantity.Stamp;

/** Names events by the sample they follow. */
final class EventIds {
  private int boot;
  private long sequence;
  private int count;

  String next(Stamp now) {
    if (now.boot() != boot || now.sequence() != sequence) {
      boot = now.boot();
      sequence = now.sequence();
      count = 0;
    }
    count++;
    return now.id() + "-" + count;
  }
}
