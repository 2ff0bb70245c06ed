package feedwitness.settings;

import feedwitness.site.MeasuringPoint;

/** A measuring point and the table it was read from. */
record PlacedPoint(MeasuringPoint point, Section section) {
  /** For messages: file and line of the point. */
  String where() {
    return section.source().file() + ":" + section.spot("name").line();
  }
}
