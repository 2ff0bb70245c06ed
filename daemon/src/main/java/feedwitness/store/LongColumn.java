package feedwitness.store;

import java.util.Arrays;

/**
 * Whole numbers that mostly grow by the same step: first number, usual step, then how far each step
 * differs from it. The usual step is the median, so that one gap does not spoil the rest. Exact for
 * all numbers: differences wrap around, and back.
 */
final class LongColumn {
  /** So many steps tell the usual one. */
  private static final int SAMPLED = 255;

  private LongColumn() {}

  static void write(ByteSink sink, long[] values) {
    if (values.length == 0) {
      return;
    }
    long step = medianStep(values);
    sink.signed(values[0]);
    sink.signed(step);
    for (int i = 1; i < values.length; i++) {
      sink.signed(values[i] - values[i - 1] - step);
    }
  }

  static long[] read(ByteSource source, int count) throws DamagedException {
    long[] values = new long[count];
    if (count == 0) {
      return values;
    }
    values[0] = source.signed();
    long step = source.signed();
    for (int i = 1; i < count; i++) {
      values[i] = values[i - 1] + step + source.signed();
    }
    return values;
  }

  private static long medianStep(long[] values) {
    if (values.length < 2) {
      return 0;
    }
    int stride = 1 + (values.length - 2) / SAMPLED;
    long[] steps = new long[(values.length - 2) / stride + 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = values[i * stride + 1] - values[i * stride];
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }
}
