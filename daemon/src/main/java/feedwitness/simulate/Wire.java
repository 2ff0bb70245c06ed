package feedwitness.simulate;

/** The two cables that leave the nursery. */
public enum Wire {
  /** The source probe, pushing text lines. */
  SOURCE,
  /** The RS-485 bus with the probes of tank and line. */
  BUS;

  Deed.Target target() {
    return this == SOURCE ? Deed.Target.SOURCE : Deed.Target.BUS;
  }

  /** Name of the link in the port directory. */
  String text() {
    return target().text();
  }
}
