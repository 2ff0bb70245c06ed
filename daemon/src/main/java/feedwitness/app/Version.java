package feedwitness.app;

/** Which version of the program this is. */
final class Version {
  private Version() {}

  /** As in the jar's manifest; {@code development} when run from classes. */
  static String text() {
    String packaged = Version.class.getPackage().getImplementationVersion();
    return packaged == null ? "development" : packaged;
  }
}
