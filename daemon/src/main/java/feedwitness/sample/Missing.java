package feedwitness.sample;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;

/**
 * No indication where one was due.
 *
 * @param detail what happened, for people: item, value, limit, remedy
 */
public record Missing(PointName point, Stamp stamp, Cause cause, String detail) implements Sample {

  /** Why nothing arrived. The code is kept in the store: never renumber. */
  public enum Cause {
    NO_SUCH_PORT(1, "no such port"),
    PORT_TAKEN(2, "port taken by another program"),
    NO_PERMISSION(3, "no permission to open the port"),
    CABLE_PULLED(4, "cable pulled or device gone"),
    SILENT(5, "instrument silent"),
    UNREADABLE(6, "nothing readable among what arrives"),
    INSTRUMENT_REFUSED(7, "instrument answers with an error"),
    PORT_FAILED(8, "port failed");

    private final int code;
    private final String words;

    Cause(int code, String words) {
      this.code = code;
      this.words = words;
    }

    /** Stable number for the store. */
    public int code() {
      return code;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }
}
