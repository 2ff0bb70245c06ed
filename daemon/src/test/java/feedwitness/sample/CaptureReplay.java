package feedwitness.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.FrameOutcome;
import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.FrameOutcome.Rejection;
import feedwitness.frame.Framer;
import feedwitness.frame.LineFramer;
import feedwitness.frame.ModbusRequest;
import feedwitness.frame.ModbusRtuFramer;
import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Protocol;
import feedwitness.profile.Protocol.Read;
import feedwitness.quantity.Octets;
import feedwitness.sample.Capture.Step;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;

/** Plays a capture to the framer and decoder of a profile and holds what comes out against it. */
public final class CaptureReplay {
  /** Relative: a float32 register holds seven digits. */
  private static final double TOLERANCE = 1e-6;

  private final DeviceProfile profile;
  private final Framer framer;
  private final Decoder decoder;
  private final List<Frame> collected = new ArrayList<>();
  private final Deque<Step> seen = new ArrayDeque<>();

  private CaptureReplay(DeviceProfile profile) {
    this.profile = profile;
    this.framer =
        profile.protocol() instanceof Protocol.Line line
            ? line.query().isPresent()
                ? LineFramer.afterQuery(line.longestLine())
                : LineFramer.joining(line.longestLine())
            : new ModbusRtuFramer();
    this.decoder = Decoder.of(profile);
  }

  /** Fails with the place in the capture if profile and capture do not agree. */
  public static void check(DeviceProfile profile, Capture capture) {
    CaptureReplay replay = new CaptureReplay(profile);
    int readings = 0;
    for (int i = 0; i < capture.steps().size(); i++) {
      String where = capture.name() + ", step " + (i + 1) + ": " + capture.steps().get(i);
      if (capture.steps().get(i) instanceof Step.Reads) {
        readings++;
      }
      replay.play(capture.steps().get(i), where);
    }
    assertEquals(List.of(), List.copyOf(replay.seen), capture.name() + ": not in the capture");
    assertTrue(readings > 0, capture.name() + " shows no reading");
  }

  private void play(Step step, String where) {
    if (step instanceof Step.Sent sent) {
      send(sent.octets(), where);
    } else if (step instanceof Step.Received received) {
      take(framer.feed(received.octets()));
    } else if (step instanceof Step.Quiet) {
      take(framer.giveUp());
    } else {
      assertTrue(!seen.isEmpty(), where + ", but nothing came");
      compare(step, seen.removeFirst(), where);
    }
  }

  private static void compare(Step expected, Step actual, String where) {
    if (expected instanceof Step.Reads a && actual instanceof Step.Reads b) {
      assertEquals(a.reading().conductivityUnit(), b.reading().conductivityUnit(), where);
      assertEquals(a.reading().temperatureUnit(), b.reading().temperatureUnit(), where);
      near(a.reading().conductivity(), b.reading().conductivity(), where);
      near(a.reading().temperature(), b.reading().temperature(), where);
      assertEquals(a.reading().contact(), b.reading().contact(), where);
    } else {
      assertEquals(expected, actual, where);
    }
  }

  private static void near(double expected, double actual, String where) {
    double size = Double.isNaN(expected) ? 1 : Math.max(Math.abs(expected), 1e-3);
    assertEquals(expected, actual, TOLERANCE * size, where);
  }

  /** What the capture says was sent must be what the profile sends. */
  private void send(Octets octets, String where) {
    collected.clear();
    if (profile.protocol() instanceof Protocol.Line line) {
      assertEquals(line.query().orElse(Octets.NONE), octets, where);
    } else if (profile.protocol() instanceof Protocol.Modbus modbus) {
      ModbusRequest request =
          modbus.reads().stream()
              .map(read -> request(octets.at(0), read))
              .filter(each -> each.octets().equals(octets))
              .findFirst()
              .orElseThrow(() -> new AssertionError(where + " is no read of the profile"));
      take(((ModbusRtuFramer) framer).expect(request));
    }
  }

  private static ModbusRequest request(int unit, Read read) {
    return new ModbusRequest(unit, read.function(), read.start(), read.count());
  }

  private void take(List<FrameOutcome> outcomes) {
    for (FrameOutcome outcome : outcomes) {
      if (outcome instanceof Rejection rejection) {
        seen.add(new Step.Rejects(words(rejection.reason())));
      } else if (outcome instanceof Frame frame) {
        collected.add(frame);
        if (complete(frame)) {
          seen.add(step(decoder.decode(List.copyOf(collected))));
          collected.clear();
        }
      }
    }
  }

  private boolean complete(Frame latest) {
    return !(profile.protocol() instanceof Protocol.Modbus modbus)
        || collected.size() == modbus.reads().size()
        || latest.octets().at(1) >= 0x80;
  }

  private static Step step(DecodeOutcome outcome) {
    if (outcome instanceof DecodeOutcome.Decoded decoded) {
      return new Step.Reads(decoded.reading());
    }
    if (outcome instanceof DecodeOutcome.Refused refused) {
      return new Step.Rejects(
          refused.cause() == Missing.Cause.UNREADABLE ? "not-understood" : words(refused.cause()));
    }
    return new Step.PassesOver();
  }

  private static String words(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
