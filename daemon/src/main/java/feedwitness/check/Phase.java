package feedwitness.check;

/** What a check waits for. */
public enum Phase {
  RINSE("rinse the probe with a little of %s, throw that away"),
  IMMERSE("put the probe into %s, shake the bubbles off, do not let it touch the wall"),
  SETTLING("leave it in %s, wait until it has come to rest"),
  DID_YOU_MEAN("say which standard the probe is in"),
  ROUND_DONE("clean and check again, adjust, or finish"),
  CLOSED("put the probe back in its place");

  private final String guide;

  Phase(String guide) {
    this.guide = guide;
  }

  String guide(String standard) {
    return guide.contains("%s") ? guide.formatted(standard) : guide;
  }
}
