package feedwitness.quantity;

/**
 * Settings of a serial line.
 *
 * @param baud bits per second, 300 to 1 000 000
 * @param dataBits 7 or 8
 * @param stopBits 1 or 2
 */
public record SerialSettings(int baud, int dataBits, Parity parity, int stopBits) {
  /** The parity bit. */
  public enum Parity {
    NONE,
    EVEN,
    ODD
  }

  public SerialSettings {
    if (baud < 300 || baud > 1_000_000) {
      throw new IllegalArgumentException("baud %d is outside 300 to 1000000".formatted(baud));
    }
    if (dataBits != 7 && dataBits != 8) {
      throw new IllegalArgumentException("data bits %d is neither 7 nor 8".formatted(dataBits));
    }
    if (stopBits != 1 && stopBits != 2) {
      throw new IllegalArgumentException("stop bits %d is neither 1 nor 2".formatted(stopBits));
    }
  }

  /** For example {@code 9600 8N1}. */
  public String text() {
    return baud + " " + dataBits + parity.name().charAt(0) + stopBits;
  }
}
