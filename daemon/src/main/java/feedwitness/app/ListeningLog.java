package feedwitness.app;

import feedwitness.acquire.WireObserver;
import feedwitness.engine.ProbeDesk;
import feedwitness.frame.FrameOutcome;
import feedwitness.quantity.Octets;
import feedwitness.sample.DecodeOutcome;
import java.util.ArrayList;
import java.util.List;

/** Keeps what a session heard, for the page's preview. Bounded. */
final class ListeningLog implements WireObserver {
  private static final int MOST = 60;

  private final List<ProbeDesk.Heard> heard = new ArrayList<>();
  private String trouble = "";
  private Octets received = Octets.NONE;
  private Octets frame = Octets.NONE;

  @Override
  public synchronized void received(Octets octets) {
    if (octets.length() > 0) {
      received = octets;
    }
  }

  @Override
  public synchronized void framed(FrameOutcome outcome) {
    if (outcome instanceof FrameOutcome.Rejection rejection) {
      add(rejection.octets(), false, ReadingWords.of(rejection));
    } else {
      frame = outcome.octets();
    }
  }

  @Override
  public synchronized void decoded(DecodeOutcome outcome) {
    add(frame, outcome instanceof DecodeOutcome.Decoded, ReadingWords.of(outcome));
  }

  @Override
  public synchronized void trouble(String words) {
    trouble = words;
  }

  @Override
  public synchronized void opened() {
    trouble = "";
  }

  private void add(Octets octets, boolean understood, String verdict) {
    if (heard.size() < MOST) {
      heard.add(new ProbeDesk.Heard(octets.toHex(), octets.toPrintable(), understood, verdict));
    }
  }

  synchronized ProbeDesk.Preview preview() {
    if (trouble.isEmpty() && heard.isEmpty() && received.length() > 0) {
      add(received, false, "not a whole message yet; listen longer, or check the baud rate");
    }
    return new ProbeDesk.Preview(trouble, heard);
  }
}
