package feedwitness.store;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A run as octets, column by column, and back, exactly. Not deflated and without checksum: {@link
 * Envelope} does that.
 */
final class RunCodec {
  private static final long NANOS_PER_MILLI = 1_000_000;

  /** Coarsest first: a wire that stamps whole milliseconds pays for milliseconds only. */
  private static final long[] TICKS = {NANOS_PER_MILLI, 1_000, 1};

  private RunCodec() {}

  static void write(ByteSink sink, Run run) {
    run.key().write(sink);
    sink.unsigned(run.samples().size());
    writeStamps(sink, run.samples());
    writeShapes(sink, run.samples());
    double[] conductivities = new double[run.samples().size()];
    double[] temperatures = new double[conductivities.length];
    int count = 0;
    for (Kept kept : run.samples()) {
      if (kept.sample() instanceof Indication indication) {
        conductivities[count] = indication.reading().conductivity();
        temperatures[count++] = indication.reading().temperature();
      }
    }
    NumberColumn.write(sink, Arrays.copyOf(conductivities, count));
    NumberColumn.write(sink, Arrays.copyOf(temperatures, count));
  }

  private static void writeStamps(ByteSink sink, List<Kept> samples) {
    int count = samples.size();
    long[] sequences = new long[count];
    long[] ticks = new long[count];
    long[] offsets = new long[count];
    for (int i = 0; i < count; i++) {
      Stamp stamp = samples.get(i).sample().stamp();
      sequences[i] = stamp.sequence();
      ticks[i] = stamp.monotonicNanos();
      // both clocks run alike: their difference hardly changes and costs next to nothing
      offsets[i] = stamp.wallMillis() - Math.floorDiv(stamp.monotonicNanos(), NANOS_PER_MILLI);
    }
    int tick = 0;
    while (!allDivisible(ticks, TICKS[tick])) {
      tick++;
    }
    long nanos = TICKS[tick];
    Arrays.setAll(ticks, i -> ticks[i] / nanos);
    sink.octet(tick);
    LongColumn.write(sink, sequences);
    LongColumn.write(sink, ticks);
    LongColumn.write(sink, offsets);
  }

  private static boolean allDivisible(long[] values, long by) {
    for (long value : values) {
      if (value % by != 0) {
        return false;
      }
    }
    return true;
  }

  /** The dictionary of shapes, then which shape for how many samples in a row. */
  private static void writeShapes(ByteSink sink, List<Kept> samples) {
    Map<Shape, Integer> dictionary = new LinkedHashMap<>();
    ByteSink rows = new ByteSink();
    int current = 0;
    int length = 0;
    Kept before = samples.get(0);
    for (Kept kept : samples) {
      if (length > 0 && Shape.same(before, kept)) {
        length++;
        continue;
      }
      before = kept;
      Shape shape = Shape.of(kept);
      Integer known = dictionary.putIfAbsent(shape, dictionary.size());
      int index = known == null ? dictionary.size() - 1 : known;
      if (index != current) {
        rows.unsigned(current);
        rows.unsigned(length);
        current = index;
        length = 0;
      }
      length++;
    }
    rows.unsigned(current);
    rows.unsigned(length);
    sink.unsigned(dictionary.size());
    dictionary.keySet().forEach(shape -> shape.write(sink));
    sink.octets(rows.toArray());
  }

  /** Reads the head only; the source then stands at the samples. */
  static RunKey readKey(ByteSource source) throws DamagedException {
    return RunKey.read(source);
  }

  /** Reads what follows the head. */
  static Run read(ByteSource source, RunKey key, PointName point) throws DamagedException {
    int count = source.count(Run.MAX_SAMPLES);
    int tick = source.octet();
    if (tick >= TICKS.length) {
      throw new DamagedException("tick %d is not known".formatted(tick));
    }
    long[] sequences = LongColumn.read(source, count);
    long[] ticks = LongColumn.read(source, count);
    long[] offsets = LongColumn.read(source, count);
    Shape[] shapes = readShapes(source, count);
    int indicated = (int) Arrays.stream(shapes).filter(s -> s instanceof Shape.Indicated).count();
    double[] conductivities = NumberColumn.read(source, indicated);
    double[] temperatures = NumberColumn.read(source, indicated);
    List<Kept> samples = new ArrayList<>(count);
    int next = 0;
    for (int i = 0; i < count; i++) {
      long nanos = ticks[i] * TICKS[tick];
      long wall = offsets[i] + Math.floorDiv(nanos, NANOS_PER_MILLI);
      Stamp stamp = new Stamp(key.boot(), sequences[i], nanos, wall, key.dated());
      boolean has = shapes[i] instanceof Shape.Indicated;
      double conductivity = has ? conductivities[next] : Double.NaN;
      double temperature = has ? temperatures[next] : Double.NaN;
      samples.add(shapes[i].kept(point, stamp, conductivity, temperature));
      next += has ? 1 : 0;
    }
    return new Run(key, samples);
  }

  private static Shape[] readShapes(ByteSource source, int count) throws DamagedException {
    int different = source.count(count);
    Shape[] dictionary = new Shape[different];
    for (int i = 0; i < different; i++) {
      dictionary[i] = Shape.read(source);
    }
    Shape[] shapes = new Shape[count];
    for (int i = 0; i < count; ) {
      Shape shape = dictionary[source.count(different - 1L)];
      int length = source.count(count - i);
      if (length == 0) {
        throw new DamagedException("shape for no sample");
      }
      Arrays.fill(shapes, i, i + length, shape);
      i += length;
    }
    return shapes;
  }
}
