package feedwitness.store;

import java.util.List;

/**
 * Doubles, bit for bit. Written in whichever {@link NumberScheme} takes the fewest octets, each as
 * its difference to the one before; what does not fit the scheme (NaN, infinities, −0, odd doubles)
 * stands in a list of exceptions with its bits.
 */
final class NumberColumn {
  /** By their number in the file: append only. */
  private static final List<NumberScheme> SCHEMES =
      List.of(
          NumberScheme.DECIMAL,
          NumberScheme.DECIMAL_FLOAT,
          NumberScheme.FLOAT_BITS,
          NumberScheme.DOUBLE_BITS);

  /** Where the number of exceptions stands. */
  private static final int EXCEPTIONS = 1;

  private NumberColumn() {}

  static void write(ByteSink sink, double[] values) {
    byte[] best = new byte[0];
    for (NumberScheme scheme : SCHEMES) {
      byte[] encoded = encode(scheme, scheme.scaleFor(values), values);
      if (best.length == 0 || encoded.length < best.length) {
        best = encoded;
      }
      if (scheme == NumberScheme.DECIMAL && encoded[EXCEPTIONS] == 0) {
        // what an instrument printed: no other scheme is shorter
        break;
      }
    }
    sink.octets(best);
  }

  private static byte[] encode(NumberScheme scheme, int scale, double[] values) {
    ByteSink exceptions = new ByteSink();
    ByteSink wholes = new ByteSink();
    int entries = 0;
    int gap = 0;
    long previous = 0;
    for (int i = 0; i < values.length; ) {
      if (scheme.fits(values[i], scale)) {
        long whole = scheme.whole(values[i], scale);
        wholes.signed(whole - previous);
        previous = whole;
        gap++;
        i++;
        continue;
      }
      int run = runOfEqualBits(values, i);
      exceptions.unsigned(gap);
      exceptions.unsigned(run);
      exceptions.fixed64(Double.doubleToRawLongBits(values[i]));
      entries++;
      gap = 0;
      i += run;
    }
    ByteSink sink = new ByteSink();
    sink.octet((SCHEMES.indexOf(scheme) << 4) | scale);
    sink.unsigned(entries);
    sink.octets(exceptions.toArray());
    sink.octets(wholes.toArray());
    return sink.toArray();
  }

  private static int runOfEqualBits(double[] values, int from) {
    long bits = Double.doubleToRawLongBits(values[from]);
    int end = from + 1;
    while (end < values.length && Double.doubleToRawLongBits(values[end]) == bits) {
      end++;
    }
    return end - from;
  }

  static double[] read(ByteSource source, int count) throws DamagedException {
    int head = source.octet();
    int scale = head & 0xf;
    if (head >> 4 >= SCHEMES.size() || scale > NumberScheme.MAX_SCALE) {
      throw new DamagedException("number scheme %d is not known".formatted(head));
    }
    NumberScheme scheme = SCHEMES.get(head >> 4);
    double[] values = new double[count];
    boolean[] excepted = new boolean[count];
    int entries = source.count(count);
    int at = 0;
    for (int i = 0; i < entries; i++) {
      at += source.count(count - at);
      int run = source.count(count - at);
      double value = Double.longBitsToDouble(source.fixed64());
      for (int j = 0; j < run; j++, at++) {
        values[at] = value;
        excepted[at] = true;
      }
    }
    long previous = 0;
    for (int i = 0; i < count; i++) {
      if (!excepted[i]) {
        previous += source.signed();
        values[i] = scheme.value(previous, scale);
      }
    }
    return values;
  }
}
