package feedwitness.wire;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import feedwitness.quantity.Octets;
import feedwitness.quantity.SerialSettings;
import feedwitness.wire.PortOpener.Outcome;
import feedwitness.wire.PortOpener.Why;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * A serial port. Semi-blocking reads in short slices: after an unplug the library keeps calling the
 * port open and a read answers −1 at once, so the first negative answer ends this object. A port
 * object resolves its symbolic link only once; therefore every opening makes a new one.
 */
final class SerialLinePort implements Port {
  /** The kernel counts a serial read's time-out in tenths of a second. */
  private static final int SLICE_MILLIS = 100;

  /** How often a wait shorter than that looks for octets. */
  private static final int LOOK_MILLIS = 4;

  private static final int LARGEST_READ = 4096;

  /** From errno.h. */
  private static final int ENOENT = 2;

  private static final int ENXIO = 6;
  private static final int EAGAIN = 11;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int ENODEV = 19;

  private final SerialPort port;
  private final String path;
  private final byte[] buffer = new byte[LARGEST_READ];

  private SerialLinePort(SerialPort port, String path) {
    this.port = port;
    this.path = path;
  }

  static Outcome open(String path, SerialSettings settings) {
    Path device;
    try {
      device = Path.of(path).toRealPath();
    } catch (IOException e) {
      return new Outcome.Refused(
          Why.NO_SUCH_PORT, "there is no %s; plug the cable in, or see 'ports'".formatted(path));
    }
    if (!Files.isReadable(device) || !Files.isWritable(device)) {
      return noPermission(path, device);
    }
    SerialPort port;
    try {
      port = SerialPort.getCommPort(device.toString());
    } catch (SerialPortInvalidPortException e) {
      return new Outcome.Refused(
          Why.NO_SUCH_PORT, "%s is no serial port; see 'ports'".formatted(path));
    }
    port.setComPortParameters(
        settings.baud(), settings.dataBits(), stopBits(settings), parity(settings));
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, SLICE_MILLIS, 0);
    if (port.openPort(0)) {
      return new Outcome.Opened(new SerialLinePort(port, path));
    }
    return refused(path, device, port.getLastErrorCode());
  }

  private static Outcome refused(String path, Path device, int error) {
    return switch (error) {
      case EACCES -> noPermission(path, device);
      case EBUSY, EAGAIN ->
          new Outcome.Refused(
              Why.TAKEN, "%s is in use by another program; stop that program".formatted(path));
      // The library says so of a port that this very process has open already.
      case ENOENT ->
          Files.exists(device)
              ? new Outcome.Refused(
                  Why.TAKEN, "%s is in use by this service already".formatted(path))
              : gone(path);
      case ENXIO, ENODEV -> gone(path);
      default ->
          new Outcome.Refused(
              Why.FAILED,
              "%s cannot be opened (system error %d); unplug it and plug it in again"
                  .formatted(path, error));
    };
  }

  private static Outcome gone(String path) {
    return new Outcome.Refused(
        Why.NO_SUCH_PORT, "%s went away; plug the cable in, or see 'ports'".formatted(path));
  }

  private static Outcome noPermission(String path, Path device) {
    return new Outcome.Refused(
        Why.NO_PERMISSION,
        "%s may not be opened by user %s; %s"
            .formatted(path, System.getProperty("user.name"), PortAccess.remedy(device)));
  }

  private static int stopBits(SerialSettings settings) {
    return settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
  }

  private static int parity(SerialSettings settings) {
    return switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
    };
  }

  @Override
  public Octets read(int timeoutMillis) throws PortLostException {
    long deadline = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(timeoutMillis);
    long leftMillis = timeoutMillis;
    while (leftMillis > 0) {
      int count =
          leftMillis < SLICE_MILLIS ? look(leftMillis) : port.readBytes(buffer, buffer.length);
      if (count < 0) {
        throw lost();
      }
      if (count > 0) {
        return Octets.of(buffer, 0, count);
      }
      leftMillis = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
    }
    return Octets.NONE;
  }

  /** Reads what is there; if nothing is, gives it a moment. */
  private int look(long longestMillis) {
    int available = port.bytesAvailable();
    if (available != 0) {
      return available < 0 ? available : port.readBytes(buffer, Math.min(available, buffer.length));
    }
    try {
      Thread.sleep(Math.min(longestMillis, LOOK_MILLIS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return 0;
  }

  @Override
  public void write(Octets octets) throws PortLostException {
    int written = port.writeBytes(octets.toArray(), octets.length());
    if (written != octets.length()) {
      throw lost();
    }
  }

  private PortLostException lost() {
    return new PortLostException(
        "%s is gone: cable pulled or device switched off; plug it in again".formatted(path));
  }

  @Override
  public void discardInput() {
    port.flushIOBuffers();
  }

  @Override
  public void close() {
    port.closePort();
  }
}
