package feedwitness.frame;

import feedwitness.quantity.Octets;
import java.util.List;

/** Finds messages in octets. One framer belongs to one wire and one thread. */
public interface Framer {

  /** Takes the next octets off the wire; outcomes in the order in which their octets came. */
  List<FrameOutcome> feed(Octets octets);

  /** The wire went quiet or was lost: what is held back is no message and is given up. */
  List<FrameOutcome> giveUp();
}
