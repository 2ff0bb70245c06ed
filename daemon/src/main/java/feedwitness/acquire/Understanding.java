package feedwitness.acquire;

import feedwitness.frame.FrameOutcome;
import feedwitness.sample.DecodeOutcome;
import java.util.List;

/** What frames and decodings mean for a probe's watch. */
final class Understanding {
  private static final int SHOWN = 40;

  private Understanding() {}

  static void apply(DecodeOutcome decoded, List<FrameOutcome.Frame> frames, ProbeWatch watch) {
    if (decoded instanceof DecodeOutcome.Decoded good) {
      watch.reading(good.reading(), frames.stream().map(FrameOutcome.Frame::octets).toList());
    } else if (decoded instanceof DecodeOutcome.Refused refused) {
      watch.note(refused.cause(), refused.text());
    }
  }

  static String ofRejection(FrameOutcome.Rejection rejection) {
    String text = rejection.octets().toPrintable();
    return "'%s' is no reading (%s); check baud rate, parity and the profile, see 'listen'"
        .formatted(
            text.length() > SHOWN ? text.substring(0, SHOWN) + "…" : text, rejection.detail());
  }
}
