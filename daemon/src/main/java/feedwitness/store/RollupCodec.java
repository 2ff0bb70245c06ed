package feedwitness.store;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;

/**
 * Roll-ups as octets. Conductivities and temperatures are rounded to 32-bit floats (relative 6e-8,
 * a thousandth of what the best instrument resolves): that halves them, and the samples themselves
 * stay exact in their chunk.
 */
final class RollupCodec {
  /** An hour in minutes. */
  private static final int MAX_ROLLUPS = 60;

  private RollupCodec() {}

  static byte[] pack(List<Rollup> rollups) {
    ByteSink sink = new ByteSink();
    write(sink, rollups);
    return Envelope.pack(sink.toArray());
  }

  /** Minutes say what they are of: where nothing else is left, the other roll-ups follow. */
  static byte[] packMinutes(ChunkFacts facts, List<Rollup> minutes) {
    ByteSink sink = new ByteSink();
    facts.write(sink);
    write(sink, minutes);
    return Envelope.pack(Envelope.Kind.MINUTES, sink.toArray());
  }

  private static void write(ByteSink sink, List<Rollup> rollups) {
    sink.unsigned(rollups.size());
    LongColumn.write(sink, longs(rollups, Rollup::startMillis));
    LongColumn.write(sink, longs(rollups, Rollup::readings));
    LongColumn.write(sink, longs(rollups, Rollup::missing));
    LongColumn.write(sink, longs(rollups, Rollup::temperatures));
    LongColumn.write(sink, longs(rollups, Rollup::flags));
    LongColumn.write(sink, floats(rollups, Rollup::mean));
    LongColumn.write(sink, floats(rollups, Rollup::min));
    LongColumn.write(sink, floats(rollups, Rollup::max));
    LongColumn.write(sink, floats(rollups, Rollup::meanCelsius));
  }

  static List<Rollup> unpack(byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    if (Envelope.kind(packed) == Envelope.Kind.MINUTES) {
      ChunkFacts.read(source);
    }
    int count = source.count(MAX_ROLLUPS);
    long[] starts = LongColumn.read(source, count);
    long[] readings = LongColumn.read(source, count);
    long[] missing = LongColumn.read(source, count);
    long[] temperatures = LongColumn.read(source, count);
    long[] flags = LongColumn.read(source, count);
    long[] means = LongColumn.read(source, count);
    long[] minima = LongColumn.read(source, count);
    long[] maxima = LongColumn.read(source, count);
    long[] celsius = LongColumn.read(source, count);
    List<Rollup> rollups = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      rollups.add(
          new Rollup(
              starts[i],
              (int) readings[i],
              (int) missing[i],
              value(means[i]),
              value(minima[i]),
              value(maxima[i]),
              (int) temperatures[i],
              value(celsius[i]),
              flags[i]));
    }
    return rollups;
  }

  static long[] longs(List<Rollup> rollups, ToLongFunction<Rollup> column) {
    return rollups.stream().mapToLong(column).toArray();
  }

  /** Bits of floats: those of like numbers are like whole numbers. */
  static long[] floats(List<Rollup> rollups, ToDoubleFunction<Rollup> column) {
    return rollups.stream()
        .mapToLong(rollup -> Float.floatToIntBits((float) column.applyAsDouble(rollup)))
        .toArray();
  }

  static double value(long bits) {
    return Float.intBitsToFloat((int) bits);
  }
}
