package feedwitness.store;

import feedwitness.quantity.PointName;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** What one forced sync kept of all points: runs one after another, each with its length. */
final class HotCodec {
  private HotCodec() {}

  static byte[] pack(List<Run> runs) {
    ByteSink sink = new ByteSink();
    for (Run run : runs) {
      ByteSink one = new ByteSink();
      RunCodec.write(one, run);
      sink.unsigned(one.length());
      sink.octets(one.toArray());
    }
    return Envelope.pack(Envelope.Kind.HOT, sink.toArray());
  }

  /** The runs that {@code wanted} accepts; the others are passed over unread. */
  static List<Run> unpack(byte[] packed, Predicate<RunKey> wanted, PointName point)
      throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    List<Run> runs = new ArrayList<>();
    while (source.remaining() > 0) {
      ByteSource one = source.stretch(source.count(source.remaining()));
      RunKey key = RunCodec.readKey(one);
      if (wanted.test(key)) {
        runs.add(RunCodec.read(one, key, point));
      }
    }
    return runs;
  }
}
