package feedwitness.store;

/**
 * Whole numbers that nearly all grow by the same step, if at all: first number, step, and then how
 * many keep to it before one that does not, and how far that is off; over and over. Exact for all
 * numbers: differences wrap around, and back.
 */
final class RunsColumn {
  private RunsColumn() {}

  static void write(ByteSink sink, long[] values) {
    if (values.length == 0) {
      return;
    }
    long step = values.length > 1 ? values[1] - values[0] : 0;
    sink.signed(values[0]);
    sink.signed(step);
    int kept = 0;
    for (int i = 1; i < values.length; i++) {
      long off = values[i] - values[i - 1] - step;
      if (off == 0) {
        kept++;
        continue;
      }
      sink.unsigned(kept);
      sink.signed(off);
      kept = 0;
    }
    sink.unsigned(kept);
  }

  static long[] read(ByteSource source, int count) throws DamagedException {
    long[] values = new long[count];
    if (count == 0) {
      return values;
    }
    values[0] = source.signed();
    long step = source.signed();
    int kept = source.count(count);
    for (int i = 1; i < count; i++) {
      long off = 0;
      if (kept == 0) {
        off = source.signed();
        kept = source.count(count);
      } else {
        kept--;
      }
      values[i] = values[i - 1] + step + off;
    }
    return values;
  }
}
