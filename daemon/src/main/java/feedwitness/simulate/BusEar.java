package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds requests in what arrives on the bus. A read request is known by its eight octets and their
 * check; anything else ends with the silence after it, as on a real bus.
 */
final class BusEar {
  private static final int READ_REQUEST = 8;
  private static final int LAST_FIXED_FUNCTION = 6;
  private static final int LONGEST = 512;

  private final ByteArrayOutputStream heard = new ByteArrayOutputStream();

  /** Takes octets in; returns the requests that are complete now. */
  List<Octets> hear(Octets octets) {
    heard.writeBytes(octets.toArray());
    List<Octets> requests = new ArrayList<>();
    Octets all = Octets.of(heard.toByteArray());
    int at = 0;
    while (all.length() - at >= READ_REQUEST) {
      Octets frame = all.slice(at, at + READ_REQUEST);
      if (frame.at(1) > LAST_FIXED_FUNCTION || !Crc16.holds(frame)) {
        break;
      }
      requests.add(frame);
      at += READ_REQUEST;
    }
    heard.reset();
    if (all.length() - at <= LONGEST) {
      heard.writeBytes(all.slice(at, all.length()).toArray());
    }
    return requests;
  }

  /** The bus fell silent: what is left is a whole frame or rubbish; the check will tell. */
  Octets silence() {
    Octets rest = Octets.of(heard.toByteArray());
    heard.reset();
    return rest;
  }
}
