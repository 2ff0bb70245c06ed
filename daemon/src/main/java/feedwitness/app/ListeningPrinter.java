package feedwitness.app;

import feedwitness.acquire.WireObserver;
import feedwitness.frame.FrameOutcome;
import feedwitness.quantity.Octets;
import feedwitness.sample.DecodeOutcome;
import java.io.PrintWriter;

/** Prints a wire's life for whoever sets up a probe. */
final class ListeningPrinter implements WireObserver {
  private static final int OCTETS_A_ROW = 16;

  private final PrintWriter out;

  ListeningPrinter(PrintWriter out) {
    this.out = out;
  }

  @Override
  public void opened() {
    say("open; what arrives is shown as octets in hex and text, then what they mean");
  }

  @Override
  public void trouble(String words) {
    say("!  " + words);
  }

  @Override
  public void sent(Octets octets) {
    dump("> ", octets);
  }

  @Override
  public void received(Octets octets) {
    dump("< ", octets);
  }

  private void dump(String mark, Octets octets) {
    for (int start = 0; start < octets.length(); start += OCTETS_A_ROW) {
      Octets row = octets.slice(start, Math.min(start + OCTETS_A_ROW, octets.length()));
      say("%s %-47s  %s".formatted(mark, row.toHex(), row.toPrintable()));
    }
  }

  @Override
  public void framed(FrameOutcome outcome) {
    if (outcome instanceof FrameOutcome.Rejection rejection) {
      say("   rejected: " + ReadingWords.of(rejection));
    } else {
      say("   frame of %d octets".formatted(outcome.octets().length()));
    }
  }

  @Override
  public void decoded(DecodeOutcome outcome) {
    say(
        (outcome instanceof DecodeOutcome.Decoded ? "   = " : "   not understood: ")
            + ReadingWords.of(outcome));
  }

  private void say(String line) {
    out.println(line);
    out.flush();
  }
}
