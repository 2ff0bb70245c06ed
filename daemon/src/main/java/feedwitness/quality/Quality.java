package feedwitness.quality;

/** How far a measurement can be used; worse comes later, so the worst of several is the maximum. */
public enum Quality {
  GOOD,
  UNKNOWN,
  SUSPECT,
  BAD
}
