package feedwitness.sample;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Protocol;
import java.util.List;

/**
 * Understands messages by a device profile. Immutable; never throws, whatever a message holds.
 * Numbers are handed on as the instrument sent them, out of range or not: judging is not done here.
 */
public sealed interface Decoder permits LineDecoder, ModbusDecoder {

  /**
   * Decodes the messages of one reading: one line, or the replies to all reads of a Modbus profile
   * in their order (fewer if the last is an exception reply, after which asking on is pointless).
   */
  DecodeOutcome decode(List<Frame> frames);

  /** The decoder for instruments of this profile. */
  static Decoder of(DeviceProfile profile) {
    return profile.protocol() instanceof Protocol.Modbus modbus
        ? new ModbusDecoder(modbus, profile.fields())
        : new LineDecoder((Protocol.Line) profile.protocol(), profile.fields());
  }
}
