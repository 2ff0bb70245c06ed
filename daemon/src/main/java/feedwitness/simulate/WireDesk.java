package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.io.IOException;
import org.tinylog.Logger;

/**
 * One cable with the hands of a tester on it: pulled if the schedule or the hand says so, silenced
 * or garbled by hand on top of what the schedule does. Safe to call from any thread.
 */
final class WireDesk {
  private final Plug plug;
  private volatile boolean pulled;
  private volatile boolean silenced;
  private volatile boolean garbled;
  private boolean refused;

  WireDesk(Plug plug) {
    this.plug = plug;
  }

  String text() {
    return plug.text();
  }

  void pull(boolean on, boolean scheduled) {
    pulled = on;
    follow(scheduled);
  }

  void silence(boolean on) {
    silenced = on;
  }

  void garble(boolean on) {
    garbled = on;
  }

  boolean isGarbled() {
    return garbled;
  }

  /** Brings the plug where schedule and hand want it; tries again next time if refused. */
  synchronized void follow(boolean scheduled) {
    if (pulled || scheduled) {
      plug.unplug();
      return;
    }
    try {
      plug.replug();
      refused = false;
    } catch (IOException e) {
      if (!refused) {
        Logger.warn("{} cannot be plugged in: {}; trying again", plug.text(), e.getMessage());
      }
      refused = true;
    }
  }

  /** Sends what an instrument says, unless silenced. */
  void say(Octets octets) {
    if (!silenced && octets.length() > 0) {
      plug.send(octets);
    }
  }

  /** Sends octets as they are. */
  void write(Octets octets) {
    plug.send(octets);
  }

  Octets receive(int timeoutMillis) {
    return plug.receive(timeoutMillis);
  }

  void close() {
    plug.close();
  }
}
