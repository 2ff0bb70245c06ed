package feedwitness.wire;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.SerialSettings;

/** The wires of this machine: its serial ports, and TCP serial servers it can reach. */
public final class SystemPorts implements PortOpener {

  @Override
  public Outcome open(LinkAddress link, SerialSettings settings) {
    if (link instanceof LinkAddress.Tcp tcp) {
      return TcpPort.connect(tcp);
    }
    return SerialLinePort.open(((LinkAddress.Serial) link).path(), settings);
  }
}
