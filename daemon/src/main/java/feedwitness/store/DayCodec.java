package feedwitness.store;

import java.util.ArrayList;
import java.util.List;

/**
 * The hours of a day as octets, some 250. A year's course reads 365 of them: few octets are few
 * pages from the disk, so what is the same every hour is written once, and minimum and maximum as
 * distances from the mean; and they are not deflated, which would take most of the time. Rounded as
 * in {@link RollupCodec}.
 */
final class DayCodec {
  private static final int MAX_HOURS = (int) ChunkKey.HOURS_A_DAY;

  private DayCodec() {}

  static byte[] pack(List<Rollup> hours) {
    ByteSink sink = new ByteSink();
    sink.unsigned(hours.size());
    RunsColumn.write(sink, RollupCodec.longs(hours, Rollup::startMillis));
    RunsColumn.write(sink, RollupCodec.longs(hours, Rollup::readings));
    RunsColumn.write(sink, RollupCodec.longs(hours, Rollup::missing));
    RunsColumn.write(sink, RollupCodec.longs(hours, Rollup::temperatures));
    RunsColumn.write(sink, RollupCodec.longs(hours, Rollup::flags));
    long[] means = RollupCodec.floats(hours, Rollup::mean);
    long[] minima = RollupCodec.floats(hours, Rollup::min);
    long[] maxima = RollupCodec.floats(hours, Rollup::max);
    LongColumn.write(sink, means);
    for (int i = 0; i < means.length; i++) {
      // not below zero, unless the numbers themselves are: then long, but right
      sink.unsigned(means[i] - minima[i]);
      sink.unsigned(maxima[i] - means[i]);
    }
    LongColumn.write(sink, RollupCodec.floats(hours, Rollup::meanCelsius));
    return Envelope.wrap(sink.toArray());
  }

  static List<Rollup> unpack(byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    int count = source.count(MAX_HOURS);
    long[] starts = RunsColumn.read(source, count);
    long[] readings = RunsColumn.read(source, count);
    long[] missing = RunsColumn.read(source, count);
    long[] temperatures = RunsColumn.read(source, count);
    long[] flags = RunsColumn.read(source, count);
    long[] means = LongColumn.read(source, count);
    long[] minima = new long[count];
    long[] maxima = new long[count];
    for (int i = 0; i < count; i++) {
      minima[i] = means[i] - source.unsigned();
      maxima[i] = means[i] + source.unsigned();
    }
    long[] celsius = LongColumn.read(source, count);
    List<Rollup> hours = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      hours.add(
          new Rollup(
              starts[i],
              (int) readings[i],
              (int) missing[i],
              RollupCodec.value(means[i]),
              RollupCodec.value(minima[i]),
              RollupCodec.value(maxima[i]),
              (int) temperatures[i],
              RollupCodec.value(celsius[i]),
              flags[i]));
    }
    return hours;
  }
}
